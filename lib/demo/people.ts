import type { Grant, Role } from '@/lib/core/access/roles'

export type DemoPerson = {
  readonly name: string
  readonly signIn: string
  readonly roles: readonly Role[]
  readonly grants: readonly Grant[]
}

/** Invented, every one of them. The first is the owner. */
export const demoOwner: DemoPerson = { name: 'Orla Quennell', signIn: 'orla', roles: ['owner'], grants: [] }

export const demoPeople: readonly DemoPerson[] = [
  demoOwner,
  { name: 'Tamsin Ferrabee', signIn: 'tamsin', roles: ['counter'], grants: [] },
  { name: 'Dov Marrick', signIn: 'dov', roles: ['machinist'], grants: [] },
  { name: 'Ines Kestrow', signIn: 'ines', roles: ['machinist'], grants: [] },
  { name: 'Bram Oldacre', signIn: 'bram', roles: ['counter', 'machinist'], grants: ['release'] },
]

/** One for all of them: the demo answers on this machine only, and a real shop has none of it. */
export const demoPassword = 'seats before springs'
