'use client'
import { useState, type ReactNode } from 'react'
import { Button } from '@/app/_components/ui/button'
import type { FlowStepView } from '@/lib/use-cases/flow/see-flow-step'
import type { StepScreen } from '@/lib/use-cases/stations/see-step'
import { StepForm } from './step-form'

type Props = { screen: StepScreen; flow: FlowStepView; children: ReactNode }

/** A flow step can be run again, done or not: the repeat is a run of its own beside the first. */
export function FlowAgain({ screen, flow, children }: Props) {
  const [again, setAgain] = useState<number | null>(null)
  const [said, setSaid] = useState('')
  if (again === null) {
    return (
      <>
        {children}
        <p role="status">{said}</p>
        {flow.nextRun !== null && (
          <section aria-label="Repeats" className="stack">
            <p>{flow.repeatability}</p>
            <div>
              <Button onClick={() => setAgain(flow.nextRun)}>Run it again</Button>
            </div>
          </section>
        )}
      </>
    )
  }
  return (
    <>
      <h2>
        {screen.step.label}, run {again}
      </h2>
      <StepForm
        screen={blank(screen)}
        repeat={again}
        onRepeated={() => {
          setAgain(null)
          setSaid(`Run ${again} saved.`)
        }}
      />
      <div>
        <Button variant="quiet" onClick={() => setAgain(null)}>
          Back to the first run
        </Button>
      </div>
    </>
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
