import type { ReactNode } from 'react'
import type { Actor } from '@/lib/core/access/roles'
import { SignOut } from './sign-out'
import { Shell } from './shell/shell'
import type { PlaceId } from './shell/places'

type Props = {
  place?: PlaceId
  actor: Actor
  find?: string
  floor?: 'desk' | 'station'
  children: ReactNode
}

/** The shell of a signed-in page, sign-out included. */
export function StaffShell({ place, actor, find, floor, children }: Props) {
  return (
    <Shell place={place} person={actor} signOut={<SignOut />} find={find} floor={floor}>
      {children}
    </Shell>
  )
}
