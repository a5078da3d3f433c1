import type { Metadata } from 'next'
import { redirect } from 'next/navigation'
import { EmptyState } from '@/app/_components/ui/empty-state'
import { headOfTag } from '@/lib/use-cases/papers/head-of-tag'
import { requirePerson } from '@/lib/web/require-actor'

export const metadata: Metadata = { title: 'Tag' }

type Props = { params: Promise<{ tag: string }> }

/** Where the QR code of a tag leads: the head it hangs on, or hung on last. */
export default async function TagPage({ params }: Props) {
  const tag = readable((await params).tag)
  const actor = await requirePerson('job.see')
  const headId = await headOfTag(actor, tag)
  if (headId !== null) redirect(`/heads/${headId}`)
  return (
    <>
      <h1>No head wears tag {tag}</h1>
      <EmptyState title="This tag has not been on a head in this shop.">
        <p>
          Look at the number on the brass again. A head is also found by its own stamp, its casting marks or its job:
          type any of them into the Find box above.
        </p>
      </EmptyState>
    </>
  )
}

/** The part of the address as it was printed. */
function readable(part: string): string {
  try {
    return decodeURIComponent(part).slice(0, 40)
  } catch {
    return part.slice(0, 40)
  }
}
