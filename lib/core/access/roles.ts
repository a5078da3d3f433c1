export const roles = ['counter', 'machinist', 'owner'] as const
export type Role = (typeof roles)[number]

/** Rights the owner may give to a deputy, beyond a role. */
export const grants = ['release', 'waive'] as const
export type Grant = (typeof grants)[number]

/** Somebody signed in. One person may hold several roles; rights add up. */
export type Actor = {
  readonly personId: string
  readonly name: string
  readonly roles: readonly Role[]
  readonly grants: readonly Grant[]
}

export const roleWords: Record<Role, string> = { counter: 'counter', machinist: 'machinist', owner: 'owner' }
