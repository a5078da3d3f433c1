'use client'
import { useRouter } from 'next/navigation'
import { useEffect } from 'react'
import type { FieldValues, Path, PathValue } from 'react-hook-form'
import type { ActionForm } from '@/app/_components/form/use-action-form'
import { ConflictNotice } from '@/app/_components/ui/conflict-notice'
import { differences, type Difference } from './differences'

type Props<Values extends FieldValues, Value> = {
  form: ActionForm<Values, Value>
  /** The form's values as the server has them now, version included. */
  fresh: Values & { version: number }
  what: string
  /** What a field is called on this form. */
  labelOf: (path: string) => string
  by: string
}

/**
 * Shows both sides when the record was changed since this form was opened: at once when the page learns of it, at the
 * latest when the server refuses the stale change.
 */
export function BothSides<Values extends FieldValues, Value>({
  form,
  fresh,
  what,
  labelOf,
  by,
}: Props<Values, Value>) {
  const router = useRouter()
  const refused = form.refusal?.code === 'conflict'
  useEffect(() => {
    if (refused) router.refresh()
  }, [refused, router])

  const yours = form.form.getValues()
  if (form.value !== null || yours.version === fresh.version) return null
  const found = differences(yours, fresh)

  const goOnFrom = () =>
    form.form.setValue('version' as Path<Values>, fresh.version as PathValue<Values, Path<Values>>)
  return (
    <ConflictNotice
      what={what}
      yours={<Side found={found} side="yours" labelOf={labelOf} />}
      theirs={<Side found={found} side="theirs" labelOf={labelOf} />}
      by={by}
      pending={form.pending}
      onKeepYours={() => {
        goOnFrom()
        form.submit()
      }}
      onTakeTheirs={() => form.form.reset(fresh)}
    />
  )
}

type SideProps = { found: readonly Difference[]; side: 'yours' | 'theirs'; labelOf: (path: string) => string }

function Side({ found, side, labelOf }: SideProps) {
  if (found.length === 0) return <p>The same as the other.</p>
  return (
    <ul>
      {found.map((difference) => (
        <li key={difference.path}>
          {labelOf(difference.path)}: {difference[side] || 'nothing'}
        </li>
      ))}
    </ul>
  )
}
