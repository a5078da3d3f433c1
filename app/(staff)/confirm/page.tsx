import { localPath } from '@/lib/web/local-path'
import { requirePerson } from '@/lib/web/require-actor'
import { ConfirmForm } from './_components/confirm-form'

export const metadata = { title: 'Type your password once more' }

type Props = { searchParams: Promise<{ next?: string | string[] }> }

/** Comes before a file that a link asks for: a link has no place for a password beside it. */
export default async function ConfirmPage({ searchParams }: Props) {
  const { next } = await searchParams
  await requirePerson('job.see')
  return (
    <>
      <div className="stack">
        <h1>Type your password once more</h1>
        <p className="soft">What you asked for takes records of the shop along. It comes as a file then.</p>
      </div>
      <ConfirmForm next={localPath(typeof next === 'string' ? next : undefined)} />
    </>
  )
}
