import { refuse, type Result } from '../errors'
import { can } from './can'
import type { Actor } from './roles'

/** Who may sign in by PIN: those who may do a machinist's work anyway. Nobody gets a right by a PIN. */
export const mayHavePin = (actor: Actor): boolean => can(actor, 'step.tick-bench')

export const allowPin = (actor: Actor): Result<true> =>
  mayHavePin(actor)
    ? { ok: true, value: true }
    : refuse('not-allowed', 'A PIN is for work at the stations. Ask the owner for the role of machinist.')

/** The person as they stand at a tablet: a machinist's rights, whatever else they hold, and no grants. */
export const atTablet = ({ personId, name }: Actor): Actor => ({ personId, name, roles: ['machinist'], grants: [] })

/** What is known of a PIN session, and of the device that asks. */
export type PinSession = {
  readonly lastSeenAt: Date
  readonly idleMs: number
  readonly tokenHash: string
  readonly revokedAt: Date | null
}

/**
 * Whether a PIN session goes on: on its own tablet, while that is enrolled, and until it was left alone too long.
 *
 * Example: five minutes allowed, last touched 4 min 59 s ago → true; 5 min ago → false.
 */
export const pinSessionHolds = (session: PinSession, tokenHash: string | null, now: Date): boolean =>
  session.revokedAt === null &&
  tokenHash !== null &&
  session.tokenHash === tokenHash &&
  now.getTime() - session.lastSeenAt.getTime() < session.idleMs
