import type { Grant, Role } from '@/lib/core/access/roles'

export type DemoSignIn = 'orla' | 'tamsin' | 'dov' | 'ines' | 'bram'

export type DemoPerson = {
  readonly name: string
  readonly signIn: DemoSignIn
  readonly roles: readonly Role[]
  readonly grants: readonly Grant[]
  /** For an enrolled tablet; null: does not work at the stations. */
  readonly pin: string | null
}

/** Invented, every one of them. The first is the owner. */
export const demoOwner: DemoPerson = {
  name: 'Orla Quennell',
  signIn: 'orla',
  roles: ['owner'],
  grants: [],
  pin: '615083',
}

export const demoPeople: readonly DemoPerson[] = [
  demoOwner,
  { name: 'Tamsin Ferrabee', signIn: 'tamsin', roles: ['counter'], grants: [], pin: null },
  { name: 'Dov Marrick', signIn: 'dov', roles: ['machinist'], grants: [], pin: '480215' },
  { name: 'Ines Kestrow', signIn: 'ines', roles: ['machinist'], grants: [], pin: '739106' },
  { name: 'Bram Oldacre', signIn: 'bram', roles: ['counter', 'machinist'], grants: ['release'], pin: '204957' },
]

/** One for all of them: the demo answers on this machine only, and a real shop has none of it. */
export const demoPassword = 'seats before springs'
