import type { Metadata } from 'next'
import { redirect } from 'next/navigation'
import { headOfTag } from '@/lib/use-cases/papers/head-of-tag'
import { headAtStation } from '@/app/(staff)/stations/head-at-station'
import { deviceStation } from '@/lib/web/device-station'
import { requirePerson } from '@/lib/web/require-actor'

type Props = { params: Promise<{ tag: string }> }

export async function generateMetadata({ params }: Props): Promise<Metadata> {
  return { title: `Tag ${readable((await params).tag)}` }
}

/**
 * Where the QR code of a tag leads: on a device with a station to the step that is open there on the head that wears the
 * tag, or wore it last; else to the head.
 */
export default async function TagPage({ params }: Props) {
  const tag = readable((await params).tag)
  const actor = await requirePerson('job.see')
  const headId = await headOfTag(actor, tag)
  if (headId !== null) redirect(await headAtStation(actor, headId, await deviceStation()))
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
