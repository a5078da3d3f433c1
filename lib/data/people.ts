import 'server-only'
import { RefusedError } from '@/lib/core/errors'
import { isText } from '@/lib/core/plain-text'
import { db, type Reader } from './db'
import { mostInUse } from './in-use'
import { inUseFirst, pageOfRows, rowsOfPage } from './paging'

export async function personBySignIn(signIn: string) {
  return (await db()).person.findUnique({ where: { signIn: signIn.trim().toLowerCase() } })
}

/** A page of them by name, those in use first. */
export const listPeople = async (reader: Reader, page: number) =>
  pageOfRows(
    await reader.person.findMany({ orderBy: [inUseFirst, { name: 'asc' }, { id: 'asc' }], ...rowsOfPage(page) }),
  )

export async function namesOf(personIds: readonly string[]): Promise<Map<string, string>> {
  const people = await (
    await db()
  ).person.findMany({
    where: { id: { in: [...new Set(personIds)] } },
    select: { id: true, name: true },
  })
  return new Map(people.map((person) => [person.id, person.name]))
}

export async function personById(reader: Reader, id: string) {
  const person = await reader.person.findUnique({ where: { id } })
  if (!person) throw new RefusedError({ code: 'not-found', message: 'There is no such person here.' })
  return person
}

/** Null for one who is retired, or not on record. */
export async function personToSignIn(reader: Reader, id: string) {
  const person = id.length > 100 || !isText(id) ? null : await reader.person.findUnique({ where: { id } })
  return person && person.retiredAt === null ? person : null
}

/** Everybody who is not retired, by name. */
export const activePeople = (reader: Reader) =>
  reader.person.findMany({
    where: { retiredAt: null },
    orderBy: [{ name: 'asc' }, { id: 'asc' }],
    take: mostInUse.people,
  })

export const isSignInTaken = async (reader: Reader, signIn: string): Promise<boolean> =>
  (await reader.person.findUnique({ where: { signIn }, select: { id: true } })) !== null

export const hasPeople = async (reader: Reader): Promise<boolean> => (await reader.person.count()) > 0

/** '' for one who is not on record. */
export const nameOf = async (reader: Reader, id: string): Promise<string> =>
  (await reader.person.findUnique({ where: { id }, select: { name: true } }))?.name ?? ''
