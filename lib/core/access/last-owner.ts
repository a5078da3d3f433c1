import { ok, refuse, type Result } from '../errors'
import type { Role } from './roles'

export type Standing = {
  readonly personId: string
  readonly roles: readonly Role[]
  readonly retired: boolean
}

const isOwner = (person: Standing): boolean => !person.retired && person.roles.includes('owner')

/** A shop without an owner could never get one again: the change that would leave it so is refused. */
export function keepsAnOwner(people: readonly Standing[], changed: Standing): Result<true> {
  const after = people.map((person) => (person.personId === changed.personId ? changed : person))
  return after.some(isOwner)
    ? ok(true)
    : refuse('wrong-state', 'This is the last owner. Make somebody else an owner first.')
}
