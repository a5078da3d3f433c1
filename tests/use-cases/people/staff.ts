import { expect } from 'vitest'
import type { Actor } from '@/lib/core/access/roles'
import { seedShop, type DemoStaff } from '@/lib/demo/shop'
import { makeResetLink } from '@/lib/use-cases/people/make-reset-link'
import { resetPassword } from '@/lib/use-cases/people/reset-password'
import { filledDatabase, type TestDatabase } from '@/tests/setup/database'

export const now = new Date('2026-03-02T15:00:00Z')

export type Staffed = { readonly database: TestDatabase; readonly staff: DemoStaff }

/** A shop with its people, of one's own: owner, counter, two machinists, a deputy who may release. */
export async function staffedShop(): Promise<Staffed> {
  const { database, filled: staff } = await filledDatabase('staff', () => seedShop(now))
  return { database, staff }
}

/** Everybody who is no owner. */
export const notOwners = ['tamsin', 'dov', 'bram'] as const satisfies readonly (keyof DemoStaff)[]

/** Refused for want of the right, and nothing that `look` sees is other than before. */
export async function expectRefused(
  actor: Actor,
  deed: (actor: Actor) => Promise<unknown>,
  look: () => Promise<unknown>,
): Promise<void> {
  const before = await look()
  await expect(deed(actor)).rejects.toMatchObject({ refusal: { code: 'not-allowed' } })
  expect(await look()).toEqual(before)
}

/** The token of a link that the owner makes for somebody to choose a new password. */
export async function resetToken(owner: Actor, personId: string, at = now): Promise<string> {
  process.env.NEXTAUTH_SECRET ??= 'a secret of at least thirty-two characters'
  const { address } = await makeResetLink(owner, { personId }, { now: at })
  return address.slice(address.lastIndexOf('/') + 1)
}

/** The person chooses a new password by a link of the owner's. */
export async function newPasswordByLink(owner: Actor, personId: string, password: string, at = now): Promise<void> {
  const token = await resetToken(owner, personId, at)
  await resetPassword({ token, password, again: password }, { now: at })
}
