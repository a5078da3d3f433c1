'use client'
import { useRouter } from 'next/navigation'
import { useEffect } from 'react'
import { differences } from '@/app/back-room/_components/differences'
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

  const found = differences(form.form.getValues(), fresh).filter(({ path }) => !path.endsWith('version'))
  const side = (which: 'yours' | 'theirs') => (
    <ul>
      {found.map((difference) => (
        <li key={difference.path}>
          {wordsFor(difference.path, tags)}: {difference[which] || 'nothing'}
        </li>
      ))}
    </ul>
  )
  return (
    <ConflictNotice
      what={what}
      yours={side('yours')}
      theirs={side('theirs')}
      pending={form.pending}
      onKeepYours={() => {
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
