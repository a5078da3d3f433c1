'use client'
import { Link } from '@/app/_components/ui/link'
import { usePathname } from 'next/navigation'
import { placeOf, places, type PlaceId } from './places'

/** The places that this person may go to, the present one marked. */
export function PlaceLinks({ allowed }: { allowed: readonly PlaceId[] }) {
  const here = placeOf(usePathname())
  return (
    <ul>
      {places
        .filter(({ id }) => allowed.includes(id))
        .map(({ id, label, href }) => (
          <li key={id}>
            <Link href={href} aria-current={id === here ? 'true' : undefined}>
              {label}
            </Link>
          </li>
        ))}
    </ul>
  )
}
