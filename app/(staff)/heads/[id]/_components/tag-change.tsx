'use client'
import { useState } from 'react'
import { ActionForm } from '@/app/_components/form/action-form'
import { useActionForm } from '@/app/_components/form/use-action-form'
import { Button } from '@/app/_components/ui/button'
import { Dialog } from '@/app/_components/ui/dialog'
import { TextInput } from '@/app/_components/ui/text-input'
import { changeTagSchema, takeOffTagSchema } from '@/lib/schemas/tag'
import type { HeadView } from '@/lib/use-cases/heads/see-head'
import { changeTagAction, takeOffTagAction } from '../actions'

type Head = Pick<HeadView, 'headId' | 'version' | 'wornTag'>

/** A tag that is lost gets another number; one whose head has left comes off. Old numbers still find the head. */
export function TagChange({ head }: { head: Head }) {
  const [open, setOpen] = useState<'change' | 'off' | null>(null)
  const done = () => setOpen(null)
  return (
    <div className="row">
      <Button onClick={() => setOpen('change')}>{head.wornTag === '' ? 'Put a tag on' : 'Put on another tag'}</Button>
      {head.wornTag !== '' && <Button onClick={() => setOpen('off')}>Take the tag off</Button>}
      <Dialog open={open === 'change'} onClose={() => setOpen(null)} title="Put on another tag">
        <ChangeForm head={head} onDone={done} />
      </Dialog>
      <Dialog open={open === 'off'} onClose={() => setOpen(null)} title={`Take off ${head.wornTag}`}>
        <OffForm head={head} onDone={done} />
      </Dialog>
    </div>
  )
}

type FormProps = { head: Head; onDone: () => void }

function ChangeForm({ head: { headId, version }, onDone }: FormProps) {
  const form = useActionForm(changeTagSchema, changeTagAction, {
    defaultValues: { headId, version, number: '', reason: '' },
    onDone,
  })
  return (
    <ActionForm form={form} submitLabel="Put it on">
      <TextInput
        label="Number"
        hint="Left empty: the next of the shop’s own. The number it wore still finds this head."
        required={false}
        {...form.text('number')}
      />
      <TextInput label="Why" required {...form.text('reason')} />
    </ActionForm>
  )
}

function OffForm({ head: { headId, version }, onDone }: FormProps) {
  const form = useActionForm(takeOffTagSchema, takeOffTagAction, {
    defaultValues: { headId, version, reason: '' },
    onDone,
  })
  return (
    <ActionForm form={form} submitLabel="Take it off">
      <p>The plate may then be used on another head. Its number still finds this one.</p>
      <TextInput label="Why" required={false} {...form.text('reason')} />
    </ActionForm>
  )
}
