'use client'
import { useRouter } from 'next/navigation'
import { useEffect } from 'react'
import type { FieldValues } from 'react-hook-form'
import type { ActionForm } from '@/app/_components/form/use-action-form'
import { ConflictNotice } from '@/app/_components/ui/conflict-notice'
import { differences, merged, type Difference } from '@/app/_components/form/differences'

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
 * latest when the server refuses the stale change. Keeping yours keeps what you changed; the rest becomes theirs.
 */
export function ConflictResolver<Values extends FieldValues, Value>({
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

  const { reset, getValues, formState } = form.form
  const opened = formState.defaultValues
  const yours = getValues()
  if (form.value !== null || yours.version === fresh.version) return null

  function keepYours() {
    const both = merged<Values>(opened, yours, fresh)
    reset(fresh)
    reset(both, { keepDefaultValues: true })
    form.submit()
  }

  return (
    <ConflictNotice
      what={what}
      yours={<Side found={differences(opened, yours)} labelOf={labelOf} />}
      theirs={<Side found={differences(opened, fresh)} labelOf={labelOf} />}
      by={by}
      pending={form.pending}
      onKeepYours={keepYours}
      onTakeTheirs={() => reset(fresh)}
    />
  )
}

function Side({ found, labelOf }: { found: readonly Difference[]; labelOf: (path: string) => string }) {
  if (found.length === 0) return <p>Nothing you would see on this form.</p>
  return (
    <ul>
      {found.map(({ path, now }) => (
        <li key={path}>
          {labelOf(path)}: {now || 'nothing'}
        </li>
      ))}
    </ul>
  )
}
