import 'server-only'
import { db } from './db'

export async function personBySignIn(signIn: string) {
  return (await db()).person.findUnique({ where: { signIn: signIn.trim().toLowerCase() } })
}

export async function listPeople() {
  return (await db()).person.findMany({ orderBy: { name: 'asc' } })
}

export async function namesOf(personIds: readonly string[]): Promise<Map<string, string>> {
  const people = await (
    await db()
  ).person.findMany({
    where: { id: { in: [...new Set(personIds)] } },
    select: { id: true, name: true },
  })
  return new Map(people.map((person) => [person.id, person.name]))
}
