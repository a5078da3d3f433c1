'use client'
import { useRouter } from 'next/navigation'
import { useRef, useState, useTransition, type ReactNode } from 'react'
import { OperationIds } from '@/app/_components/form/operation-ids'
import { callAction, type ServerAction } from '@/app/_components/form/call-action'
import { Button, type ButtonVariant } from '@/app/_components/ui/button'
import { Notice } from '@/app/_components/ui/notice'

type Props<Input, Value> = {
  action: ServerAction<Input, Value>
  input: Input
  variant?: ButtonVariant
  children: ReactNode
}

/** One deed without a form: does it, or says why not. */
export function ActionButton<Input, Value>({ action, input, variant, children }: Props<Input, Value>) {
  const router = useRouter()
  const attempts = useRef(new OperationIds())
  const [refused, setRefused] = useState('')
  const [pending, start] = useTransition()

  function act() {
    start(async () => {
      const answer = await callAction(action, { op: attempts.current.idFor(input), input })
      if (!answer.answered) return setRefused(answer.refusal.message)
      attempts.current.answered()
      setRefused(answer.result.ok ? '' : answer.result.refusal.message)
      router.refresh()
    })
  }

  return (
    <div className="stack">
      <div>
        <Button variant={variant} pending={pending} onClick={act}>
          {children}
        </Button>
      </div>
      {refused && (
        <Notice kind="stop" title="Not done">
          <p>{refused}</p>
        </Notice>
      )}
    </div>
  )
}
