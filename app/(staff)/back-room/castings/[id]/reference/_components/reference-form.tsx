'use client'
import { useState } from 'react'
import { RefusalNotice } from '@/app/_components/form/refusal-notice'
import { useAction } from '@/app/_components/form/use-action'
import { Button } from '@/app/_components/ui/button'
import {
  changedKeys,
  typedReadings,
  type Answers,
} from '@/app/(staff)/stations/[station]/heads/[visit]/_components/answers'
import { FlowConditions } from '@/app/(staff)/stations/[station]/heads/[visit]/_components/flow-conditions'
import { FlowFields } from '@/app/(staff)/stations/[station]/heads/[visit]/_components/flow-fields'
import type { StepField } from '@/lib/use-cases/stations/see-step'
import { recordReferenceAction } from '../actions'

type Props = { castingId: string; fields: readonly StepField[] }

/** The same entry as at the flow bench. */
export function ReferenceForm({ castingId, fields }: Props) {
  const [answers, setAnswers] = useState<Answers>({})
  const [conditions, setConditions] = useState<Record<string, string>>({})
  const { run, pending, refusal, refusalRef, edited } = useAction()

  function save() {
    run({
      action: recordReferenceAction,
      input: { castingId, readings: typedReadings(answers), conditions },
    })
  }

  return (
    <section aria-label="Reference run" className="stack">
      <FlowFields
        fields={fields}
        answers={answers}
        errors={refusal?.fields ?? {}}
        onChange={(next) => {
          edited(...changedKeys(answers, next))
          setAnswers(next)
        }}
      />
      <FlowConditions values={conditions} errors={{}} onChange={setConditions} />
      {refusal && <RefusalNotice refusal={refusal} title="Not saved" ref={refusalRef} />}
      <div>
        <Button variant="main" pending={pending} onClick={save}>
          Save the reference run
        </Button>
      </div>
    </section>
  )
}
