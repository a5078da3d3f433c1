'use client'
import { useEffect } from 'react'
import type { FieldValues, Path, PathValue } from 'react-hook-form'
import type { ActionForm } from '@/app/_components/form/use-action-form'
import { Notice } from '@/app/_components/ui/notice'
import type { Affected, ChangeAnswer } from '@/lib/use-cases/rules/change-rules-seen'

/** What the button does next: show the change first, then make it. */
export const shownLabel = (answer: ChangeAnswer | null, make: string): string =>
  answer?.kind === 'shown' ? make : 'Show what changes'

type Props<Values extends FieldValues> = { form: ActionForm<Values, ChangeAnswer> }

/** What a change of the tables does to trial heads and to heads in house, before it is made. */
export function ChangeShown<Values extends FieldValues & { seen?: string }>({ form }: Props<Values>) {
  const shown = form.value?.kind === 'shown' ? form.value.shown : null
  const { setValue } = form.form
  useEffect(() => {
    if (shown) setValue('seen' as Path<Values>, shown.seen as PathValue<Values, Path<Values>>)
  }, [shown, setValue])
  if (!shown) return null
  const unseen = shown.inHouse - shown.looked
  return (
    <Notice kind={shown.takesAway.length > 0 ? 'caution' : 'info'} title="What changes">
      <Lines lines={shown.lines.length > 0 ? shown.lines : ['Nothing in the tables.']} />
      {shown.takesAway.length > 0 && (
        <p>This takes work away ({shown.takesAway.join(', ')}). Enter the reason, then apply it.</p>
      )}
      <Group title="Trial heads" none="No trial head changes its route." affected={shown.trials} />
      <Group
        title="Heads in house, if they follow"
        none={`None of ${shown.looked} heads in house changes its route.`}
        affected={shown.heads}
      />
      {unseen > 0 && <p>{unseen} more heads in house were not looked at.</p>}
      <p>Change the form to see it anew, or press the button again to make it.</p>
    </Notice>
  )
}

function Group({ title, none, affected }: { title: string; none: string; affected: readonly Affected[] }) {
  return (
    <>
      <h3>{title}</h3>
      {affected.length === 0 ? (
        <p>{none}</p>
      ) : (
        <ul>
          {affected.map(({ name, changes }) => (
            <li key={name}>
              {name}: {changes.join('; ')}.
            </li>
          ))}
        </ul>
      )}
    </>
  )
}

const Lines = ({ lines }: { lines: readonly string[] }) => (
  <ul>
    {lines.map((line) => (
      <li key={line}>{line}</li>
    ))}
  </ul>
)
