import { allow } from '@/lib/core/access/can'
import type { Actor, Grant, Role } from '@/lib/core/access/roles'
import { must } from '@/lib/core/errors'
import { lastChange, type LastChange } from '@/lib/data/audit-trail'
import { db } from '@/lib/data/db'
import { mapPage, type Paged } from '@/lib/data/paging'
import { listPeople, personById } from '@/lib/data/people'
import { actorOf } from '@/lib/data/sessions'

export type PersonSeen = {
  readonly id: string
  readonly name: string
  readonly signIn: string
  readonly roles: readonly Role[]
  readonly grants: readonly Grant[]
  readonly retired: boolean
  readonly hasPin: boolean
  readonly hasFactor: boolean
  /** False: added, and no password chosen yet. */
  readonly hasPassword: boolean
  readonly version: number
}

type Row = Awaited<ReturnType<typeof personById>>

/** Everything but the hashes of password and PIN, which leave the data layer nowhere but to be compared. */
function seen(row: Row): PersonSeen {
  const { id, name, signIn, version } = row
  const { roles, grants } = actorOf(row)
  const has = { hasPin: row.pinHash !== null, hasFactor: row.factorKey !== null, hasPassword: row.passwordHash !== '' }
  return { id, name, signIn, roles, grants, retired: row.retiredAt !== null, ...has, version }
}

export async function seePeople(actor: Actor, page = 1): Promise<Paged<PersonSeen>> {
  must(allow(actor, 'person.change'))
  return mapPage(await listPeople(await db(), page), seen)
}

export async function seePerson(
  actor: Actor,
  personId: string,
): Promise<{ person: PersonSeen; last: LastChange | null }> {
  must(allow(actor, 'person.change'))
  const client = await db()
  const row = await personById(client, personId)
  return { person: seen(row), last: await lastChange(client, 'person', personId) }
}
