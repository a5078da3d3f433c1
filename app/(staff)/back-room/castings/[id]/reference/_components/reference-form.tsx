'use client'
import { useRouter } from 'next/navigation'
import { useRef, useState, useTransition } from 'react'
import { OperationIds } from '@/app/_components/form/operation-ids'
import { callAction } from '@/app/_components/form/call-action'
import { Button } from '@/app/_components/ui/button'
import { Notice } from '@/app/_components/ui/notice'
import { typedReadings, type Answers } from '@/app/(staff)/stations/[station]/heads/[visit]/_components/answers'
import { FlowConditions } from '@/app/(staff)/stations/[station]/heads/[visit]/_components/flow-conditions'
import { FlowFields } from '@/app/(staff)/stations/[station]/heads/[visit]/_components/flow-fields'
import type { Refusal } from '@/lib/core/errors'
import type { StepField } from '@/lib/use-cases/stations/see-step'
import { recordReferenceAction } from '../actions'

type Props = { castingId: string; fields: readonly StepField[] }

/** The same entry as at the flow bench. */
export function ReferenceForm({ castingId, fields }: Props) {
  const router = useRouter()
  const [answers, setAnswers] = useState<Answers>({})
  const [conditions, setConditions] = useState<Record<string, string>>({})
  const [refusal, setRefusal] = useState<Refusal | null>(null)
  const [pending, start] = useTransition()
  const attempts = useRef(new OperationIds())
  const notice = useRef<HTMLDivElement>(null)

  function save() {
    const input = { castingId, readings: typedReadings(answers), conditions }
    start(async () => {
      const answer = await callAction(recordReferenceAction, { op: attempts.current.idFor(input), input })
      if (answer.answered) attempts.current.answered()
      const refused = answer.answered ? (answer.result.ok ? null : answer.result.refusal) : answer.refusal
      setRefusal(refused)
      if (refused) setTimeout(() => notice.current?.focus())
      else router.push(`/back-room/castings/${castingId}`)
    })
  }

  return (
    <section aria-label="Reference run" className="stack">
      <FlowFields fields={fields} answers={answers} errors={refusal?.fields ?? {}} onChange={setAnswers} />
      <FlowConditions values={conditions} onChange={setConditions} />
      {refusal && (
        <Notice kind="stop" title="Not saved" ref={notice}>
          <p>{refusal.message}</p>
        </Notice>
      )}
      <div>
        <Button variant="main" pending={pending} onClick={save}>
          Save the reference run
        </Button>
      </div>
    </section>
  )
}
