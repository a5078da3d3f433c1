'use client'
import { useState } from 'react'
import { RefusalNotice } from '@/app/_components/form/refusal-notice'
import { useAction } from '@/app/_components/form/use-action'
import { Button } from '@/app/_components/ui/button'
import { Notice } from '@/app/_components/ui/notice'
import { TextInput } from '@/app/_components/ui/text-input'
import { setCornerInsetAction } from '../../../../actions'

/** Asked once, where the first corners are read: without it the corners say nothing of the cut at the edges. */
export function CornerInsetForm() {
  const [edge, setEdge] = useState('')
  const [end, setEnd] = useState('')
  const { run, pending, refusal, refusalRef, edited } = useAction('where corners are touched')
  const text = (name: 'edge' | 'end', value: string, set: (text: string) => void) => ({
    name,
    value,
    inputMode: 'decimal' as const,
    autoComplete: 'off',
    error: refusal?.fields?.[name],
    onChange: (event: { target: { value: string } }) => {
      edited(name)
      set(event.target.value)
    },
  })
  return (
    <Notice kind="caution" title="Where do you touch the corners?" live={false}>
      <p>How far inside the edges of the deck, in inches. Asked once, for the whole shop.</p>
      <div className="row">
        <TextInput label="Inside the long edges" {...text('edge', edge, setEdge)} />
        <TextInput label="Inside the ends" {...text('end', end, setEnd)} />
        <Button pending={pending} onClick={() => run({ action: setCornerInsetAction, input: { edge, end } })}>
          Save
        </Button>
      </div>
      {refusal && !refusal.fields && <RefusalNotice refusal={refusal} title="Not saved" ref={refusalRef} />}
    </Notice>
  )
}
