import { Link } from '@/app/_components/ui/link'
import { Notice } from '@/app/_components/ui/notice'

/** Heads in house use older rules until the owner applies the newest. */
export function Behind({ count }: { count: number }) {
  if (count === 0) return null
  return (
    <Notice live={false} title="Heads in house">
      <p>
        {count === 1
          ? 'One head in house was booked under older limits or steps.'
          : `${count} heads in house were booked under older limits or steps.`}{' '}
        <Link href="/back-room/steps/apply">See what the newest would change</Link>
      </p>
    </Notice>
  )
}
