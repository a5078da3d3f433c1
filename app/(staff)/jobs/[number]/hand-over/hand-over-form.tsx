'use client'
import { useState } from 'react'
import { ActionForm } from '@/app/_components/form/action-form'
import { useActionForm } from '@/app/_components/form/use-action-form'
import { CheckList } from '@/app/_components/ui/choice'
import { Notice } from '@/app/_components/ui/notice'
import { TextInput } from '@/app/_components/ui/text-input'
import { toggled } from '@/app/_components/ui/toggled'
import { handOverSchema } from '@/lib/schemas/release'
import { handOverAction } from './actions'

type Head = {
  readonly visitId: string
  readonly tag: string
  readonly side: string
  readonly cameWith: string
}
type Props = { jobId: string; heads: readonly Head[] }

/** Who takes which heads, which side each goes on, and what goes back with them. */
export function HandOverForm({ jobId, heads }: Props) {
  const line = ({ visitId, side }: Head) => ({ visitId, side, partsBack: '' })
  const [going, setGoing] = useState<readonly string[]>(heads.map((head) => head.visitId))
  const form = useActionForm(handOverSchema, handOverAction, {
    defaultValues: { jobId, takenBy: '', note: '', heads: heads.map(line) },
  })
  const { setValue, watch } = form.form
  const lines = watch('heads')

  function pick(ids: readonly string[]) {
    setGoing(ids)
    const chosen = heads.filter((head) => ids.includes(head.visitId))
    setValue(
      'heads',
      chosen.map((head) => lines.find((entry) => entry.visitId === head.visitId) ?? line(head)),
    )
  }

  if (form.value && heads.length === 0) return <Notice title="Handed over">{form.value.tags.join(', ')}</Notice>
  return (
    <ActionForm form={form} submitLabel="Hand over">
      <CheckList
        label="Which heads go"
        name="going"
        values={[...going]}
        onChange={(event) => pick(toggled(going, event.target))}
        options={heads.map((head) => ({ value: head.visitId, label: head.tag }))}
        error={form.form.formState.errors.heads?.message ?? form.form.formState.errors.heads?.root?.message}
      />
      <TextInput label="Who takes them" required {...form.text('takenBy')} />
      {lines.map((entry, place) => {
        const head = heads.find((candidate) => candidate.visitId === entry.visitId)
        return (
          <fieldset key={entry.visitId} className="stack">
            <legend>{head?.tag}</legend>
            <TextInput
              label="Goes on"
              hint="Left bank, right bank, fits either side, the only head, or “not said”."
              required
              {...form.text(`heads.${place}.side`)}
            />
            <TextInput
              label="Parts and cores that go back with it"
              hint={
                head?.cameWith
                  ? `It came with: ${head.cameWith}. Empty: nothing goes back.`
                  : 'Empty: nothing goes back.'
              }
              required={false}
              {...form.text(`heads.${place}.partsBack`)}
            />
          </fieldset>
        )
      })}
      <TextInput label="Note" required={false} {...form.text('note')} />
    </ActionForm>
  )
}
