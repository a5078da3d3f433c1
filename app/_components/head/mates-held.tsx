import { Link } from '@/app/_components/ui/link'
import { Notice } from '@/app/_components/ui/notice'

type Mate = {
  readonly visitId: string
  readonly headId: string
  readonly tag: string
  readonly reason: string
}

/** Whoever works on a head is told that its mate is held: both are cut to one figure. */
export function MatesHeld({ mates }: { mates: readonly Mate[] }) {
  if (mates.length === 0) return null
  return (
    <Notice kind="caution" title="The mate is held" live={false}>
      {mates.map(({ visitId, headId, tag, reason }) => (
        <p key={visitId + reason}>
          <Link href={`/heads/${headId}`}>{tag}</Link>, its mate, is held: {reason}
        </p>
      ))}
    </Notice>
  )
}
