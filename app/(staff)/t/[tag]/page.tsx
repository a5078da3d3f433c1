import type { Metadata } from 'next'
import { redirect } from 'next/navigation'
import { headOfTag } from '@/lib/use-cases/papers/head-of-tag'
import { requirePerson } from '@/lib/web/require-actor'

type Props = { params: Promise<{ tag: string }> }

export async function generateMetadata({ params }: Props): Promise<Metadata> {
  return { title: `Tag ${readable((await params).tag)}` }
}

/** Where the QR code of a tag leads: the head it hangs on, or hung on last. */
export default async function TagPage({ params }: Props) {
  const tag = readable((await params).tag)
  const actor = await requirePerson('job.see')
  const headId = await headOfTag(actor, tag)
  if (headId !== null) redirect(`/heads/${headId}`)
  return (
    <>
      <h1>Tag {tag} not found</h1>
      <p>
        No head has had this tag. Check the number on the brass, or type the head’s stamp, casting marks or job into the
        Find box.
      </p>
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
