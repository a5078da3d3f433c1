'use client'
import type { ReactNode } from 'react'
import type { ServerAction } from '@/app/_components/form/call-action'
import { RefusalOrAsk } from '@/app/_components/form/refusal-or-ask'
import { useAction } from '@/app/_components/form/use-action'
import { Button } from '@/app/_components/ui/button'
import type { ButtonVariant } from '@/app/_components/ui/button-class'

type Props<Input extends object, Value> = {
  action: ServerAction<Input, Value>
  input: Input
  variant?: ButtonVariant
  onDone?: (value: Value) => void
  children: ReactNode
}

/** One deed without a form: does it, or says why not. */
export function ActionButton<Input extends object, Value>({
  action,
  input,
  variant,
  onDone,
  children,
}: Props<Input, Value>) {
  const { run, pending, refusal, refusalRef } = useAction()
  const send = () => run({ action, input, onDone })
  return (
    <div className="stack">
      <div>
        <Button variant={variant} pending={pending} onClick={send}>
          {children}
        </Button>
      </div>
      {refusal && <RefusalOrAsk refusal={refusal} title="Not done" ref={refusalRef} onAgain={send} />}
    </div>
  )
}
