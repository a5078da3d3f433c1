import Link from 'next/link'
import { Notice } from '@/app/_components/ui/notice'

/** Heads in house follow older rules until they are told otherwise. */
export function Behind({ count }: { count: number }) {
  if (count === 0) return null
  return (
    <Notice live={false} title="Heads in house">
      <p>
        {count === 1
          ? 'One head in house follows the limits and steps of the day it was booked.'
          : `${count} heads in house follow the limits and steps of the day they were booked.`}{' '}
        <Link href="/back-room/steps/apply">See what the newest would change</Link>
      </p>
    </Notice>
  )
}
