'use client'
import { useState } from 'react'
import { RefusalOrAsk } from '@/app/_components/form/refusal-or-ask'
import { TakenOver } from '@/app/_components/form/taken-over'
import { useAction } from '@/app/_components/form/use-action'
import { Busy } from '@/app/_components/ui/busy'
import { Button } from '@/app/_components/ui/button'
import { TextArea } from '@/app/_components/ui/text-area'
import { logCallAction } from '../actions'

/** Always open and one field, so the server alone checks it: what checks longer forms need not be here for it. */
export function LogCall({ jobId }: { jobId: string }) {
  const { run, pending, refusal, refusalRef, edited } = useAction()
  const [text, setText] = useState('')
  const send = () => run({ action: logCallAction, input: { jobId, text }, onDone: () => setText('') })
  return (
    <form
      noValidate
      className="stack"
      onSubmit={(event) => {
        event.preventDefault()
        send()
      }}
    >
      <TakenOver>
        <TextArea
          label="Who called, and what was said"
          rows={2}
          name="text"
          value={text}
          onChange={(event) => {
            setText(event.target.value)
            edited('text')
          }}
          error={refusal?.fields?.text}
        />
        {refusal && <RefusalOrAsk refusal={refusal} title="Not done" ref={refusalRef} onAgain={send} />}
        <div className="row">
          <Button type="submit" variant="main" pending={pending}>
            Log call
          </Button>
        </div>
      </TakenOver>
      <Busy when={pending} label="Sending…" />
    </form>
  )
}
