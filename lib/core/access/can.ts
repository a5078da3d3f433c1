import { refuse, type Result } from '../errors'
import type { Station } from '../route/step-ids'
import type { Actor, Role } from './roles'
import { accessTable, type Action } from './table'

/** Whether this person may do this, by the table. */
export function can(actor: Actor, action: Action): boolean {
  const rule: { roles: readonly Role[]; grant?: 'release' | 'waive' } = accessTable[action]
  const byRole = actor.roles.some((role) => rule.roles.includes(role))
  const byGrant = rule.grant !== undefined && actor.grants.includes(rule.grant)
  return byRole || byGrant
}

export const allow = (actor: Actor, action: Action): Result<true> =>
  can(actor, action)
    ? { ok: true, value: true }
    : refuse('not-allowed', `${actor.name} does not have the right to do this. Ask the owner.`)

/** Front-desk steps belong to everybody at the counter; every other station is the machinist's. */
export const tickAction = (station: Station): Action =>
  station === 'front-desk' ? 'step.tick-desk' : 'step.tick-bench'

export const readAction = (station: Station): Action =>
  station === 'front-desk' ? 'reading.record-desk' : 'reading.record-bench'
