'use client'
import { useEffect } from 'react'
import type { DefaultValues, FieldValues } from 'react-hook-form'
import type { ActionForm } from '@/app/_components/form/use-action-form'
import { ConflictNotice } from '@/app/_components/ui/conflict-notice'
import { differences, merged, versionsIn, type Difference } from '@/app/_components/form/differences'

type Props<Values extends FieldValues, Value> = {
  form: ActionForm<Values, Value>
  /** The form's values as the server has them now, versions included. */
  fresh: DefaultValues<NoInfer<Values>>
  what: string
  /** What a field is called on this form. */
  labelOf: (path: string) => string
  by: string
}

/**
 * Shows both sides when the record was changed since this form was opened: at once when the page learns of it, at the
 * latest when the server refuses the stale change. "Keep mine" keeps what you changed; the rest becomes theirs. A form in
 * which nothing was changed takes the new values without a question.
 */
export function ConflictResolver<Values extends FieldValues, Value>({
  form,
  fresh,
  what,
  labelOf,
  by,
}: Props<Values, Value>) {
  const { whenDone } = form
  const { reset, getValues, formState } = form.form
  const opened = formState.defaultValues
  const yours = getValues()
  const isCurrent = String(versionsIn(yours)) === String(versionsIn(fresh))
  const changes = differences(opened, yours)
  const isUntouched = changes.length === 0
  useEffect(() => {
    if (!isCurrent && isUntouched) reset(fresh)
  })
  // What was saved is where the next change begins.
  useEffect(() => whenDone(() => reset(getValues())), [whenDone, reset, getValues])
  if (isCurrent || isUntouched) return null

  function keepMine() {
    const both = merged<unknown>(opened, yours, fresh) as Values
    reset(fresh)
    reset(both, { keepDefaultValues: true })
    form.submit()
  }

  return (
    <ConflictNotice
      what={what}
      yours={<Side found={changes} labelOf={labelOf} />}
      theirs={<Side found={differences(opened, fresh)} labelOf={labelOf} />}
      by={by}
      pending={form.pending}
      onKeepMine={keepMine}
      onUseTheirs={() => {
        reset(fresh)
        form.clear()
      }}
    />
  )
}

function Side({ found, labelOf }: { found: readonly Difference[]; labelOf: (path: string) => string }) {
  if (found.length === 0) return <p>No change on this form.</p>
  return (
    <ul>
      {found.map(({ path, now }) => (
        <li key={path}>
          {labelOf(path)}: {now || 'empty'}
        </li>
      ))}
    </ul>
  )
}
