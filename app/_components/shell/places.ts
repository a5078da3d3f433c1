import type { Action } from '@/lib/core/access/table'

export const places = [
  { id: 'counter', label: 'Counter', href: '/counter', needs: 'job.see' },
  { id: 'stations', label: 'Stations', href: '/stations', needs: 'job.see' },
  { id: 'away', label: 'Away', href: '/away', needs: 'outside.see' },
  { id: 'cut-bench', label: 'Cut bench', href: '/cut-bench', needs: 'cut-bench.see' },
  { id: 'back-room', label: 'Back room', href: '/back-room', needs: 'back-room.see' },
] as const satisfies readonly { id: string; label: string; href: string; needs: Action }[]

export type PlaceId = (typeof places)[number]['id']

/** Where an address belongs; undefined for a page that belongs to none of the five (a job, a head, help). */
export const placeOf = (pathname: string): PlaceId | undefined =>
  places.find(({ href }) => pathname === href || pathname.startsWith(`${href}/`))?.id ??
  (/^\/customers(\/|$)/.test(pathname) ? 'counter' : undefined)
