'use client'
import { useRouter } from 'next/navigation'
import { useEffect } from 'react'
import { differences, merged, type Difference } from '@/app/_components/form/differences'
import type { ActionForm } from '@/app/_components/form/use-action-form'
import { ConflictNotice } from '@/app/_components/ui/conflict-notice'
import type { ChangeJobForm } from '@/lib/schemas/job'

type Props = {
  form: ActionForm<ChangeJobForm, { changed: number }>
  /** The form's values as the server has them now. */
  fresh: ChangeJobForm
  tags: readonly string[]
  what: string
}

const words: Readonly<Record<string, string>> = {
  promiseOn: 'promise date',
  urgent: 'urgent',
  note: 'note',
  partsPlace: 'place of the parts',
  target: 'target',
  side: 'side',
  rackPlace: 'rack place',
}

/** The server refused because somebody was first: both sides, and the choice. */
export function JobConflict({ form, fresh, tags, what }: Props) {
  const router = useRouter()
  const refused = form.refusal?.code === 'conflict'
  useEffect(() => {
    if (refused) router.refresh()
  }, [refused, router])
  if (!refused) return null

  const yours = form.form.getValues()
  const list = (found: readonly Difference[]) => (
    <ul>
      {found
        .filter(({ path }) => !path.endsWith('version'))
        .map(({ path, now }) => (
          <li key={path}>
            {wordsFor(path, tags)}: {now || 'nothing'}
          </li>
        ))}
    </ul>
  )
  return (
    <ConflictNotice
      what={what}
      yours={list(differences(fresh, yours))}
      theirs={list(differences(yours, fresh))}
      pending={form.pending}
      onKeepYours={() => {
        form.form.reset(merged(form.form.formState.defaultValues, yours, fresh))
        form.form.setValue('version', fresh.version)
        fresh.visits.forEach(({ version }, at) => form.form.setValue(`visits.${at}.version`, version))
        form.submit()
      }}
      onTakeTheirs={() => form.form.reset(fresh)}
    />
  )
}

/** "visits.1.target" → "T-0402, target". */
function wordsFor(path: string, tags: readonly string[]): string {
  const [first = '', at = '', field = ''] = path.split('.')
  if (first !== 'visits') return words[first] ?? first
  return `${tags[Number(at)] ?? ''}, ${words[field] ?? field}`
}
