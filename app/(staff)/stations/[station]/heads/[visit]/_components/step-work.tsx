'use client'
import { useState, type ReactNode } from 'react'
import { Button } from '@/app/_components/ui/button'
import { useSettled } from '@/app/_components/ui/use-settled'
import type { FlowStepView } from '@/lib/use-cases/flow/see-flow-step'
import type { StepScreen } from '@/lib/use-cases/stations/see-step'
import { StepDone } from './step-done'
import { Repeats } from './later'
import { StepForm } from './step-form'
import type { WhatNext } from './what-next'

type Props = {
  screen: StepScreen
  next: WhatNext
  /** A flow run can be repeated; null at other steps. */
  flow: FlowStepView | null
  /** What whoever takes the step has to know first. */
  notices: ReactNode
  above: ReactNode
  below: ReactNode
}

/** The step as it stands: what there is to do, or what was done. Each comes up in the place of the other. */
export function StepWork({ screen, next, flow, notices, above, below }: Props) {
  const done = screen.step.state === 'done' || screen.step.state === 'waived'
  const settled = useSettled(done ? 'done' : 'to do')
  const [again, setAgain] = useState<number | null>(null)
  const [said, setSaid] = useState('')
  if (again !== null) {
    return (
      <StepForm
        screen={blank(screen)}
        repeat={again}
        above={
          <div className="row spread">
            <h2>Run {again}</h2>
            <Button variant="quiet" onClick={() => setAgain(null)}>
              Back to the first run
            </Button>
          </div>
        }
        onRepeated={() => {
          setAgain(null)
          setSaid(`Run ${again} saved.`)
        }}
      />
    )
  }
  const repeats = flow && <Repeats flow={flow} said={said} onAgain={() => setAgain(flow.nextRun)} />
  const under = (
    <>
      {repeats}
      {below}
    </>
  )
  return done ? (
    <StepDone screen={screen} settled={settled} next={next} notices={notices} above={above} below={under} />
  ) : (
    <StepForm screen={screen} settled={settled} notices={notices} above={above} below={under} />
  )
}

/** The same lifts, none of them answered yet; what stands is what the repeat is read beside. */
const blank = (screen: StepScreen): StepScreen => ({
  ...screen,
  fields: screen.fields.map((field) => ({
    ...field,
    answer: null,
    notTaken: null,
    previous: field.notTaken ?? field.answer ?? field.previous,
  })),
})
