import 'server-only'
import { areTriesForgotten, signInWaitMs, triesForgottenMs, type TryKind } from '@/lib/core/access/sign-in-limits'
import type { Db, Reader, Tx } from './db'

/** One of the counts that a try goes into. */
export type TryCount = { readonly kind: TryKind; readonly name: string; readonly place: string }

/** Somebody else counted at this very moment: all of it is undone and done again. */
class CountedMeanwhile extends Error {}

const isTaken = (error: unknown): boolean =>
  error instanceof CountedMeanwhile ||
  (typeof error === 'object' && error !== null && 'code' in error && (error.code === 'P2002' || error.code === 'P2034'))

/** Tries at the same moment that cannot be counted in so many rounds wait a second. */
const rounds = 8
const anotherNowMs = 1000

/**
 * Counts a try in all of `counts` before it is looked at, or in none of them where one still waits; tries at the same
 * moment cannot all be free. How long to wait, ms; 0: this one may be looked at.
 */
export async function takeTry(client: Db, counts: readonly TryCount[], now: Date): Promise<number> {
  for (let round = 0; round < rounds; round += 1) {
    // Who waits anyway costs one read and takes nobody's turn to write.
    const waitMs = longestWait(counts, await rowsOf(client, counts), now)
    if (waitMs > 0) return waitMs
    try {
      return await client.$transaction((tx) => takeIn(tx, counts, now), { timeout: 20_000, maxWait: 20_000 })
    } catch (error) {
      if (!isTaken(error)) throw error
    }
  }
  return anotherNowMs
}

type Row = { readonly wrong: number; readonly lastAt: Date }
type Rows = readonly (Row | null)[]

const isRowOf = (row: TryRow, { kind, name, place }: TryCount): boolean =>
  row.kind === kind && row.name === name && row.place === place

type TryRow = Row & { readonly kind: string; readonly name: string; readonly place: string }

async function rowsOf(reader: Reader, counts: readonly TryCount[]): Promise<Rows> {
  const found: readonly TryRow[] = await reader.signInTries.findMany({ where: { OR: [...counts] } })
  return counts.map((count) => found.find((row) => isRowOf(row, count)) ?? null)
}

const longestWait = (counts: readonly TryCount[], rows: Rows, now: Date): number =>
  Math.max(...counts.map(({ kind }, at) => signInWaitMs(kind, rows[at] ?? null, now)))

async function takeIn(tx: Tx, counts: readonly TryCount[], now: Date): Promise<number> {
  const rows = await rowsOf(tx, counts)
  const waitMs = longestWait(counts, rows, now)
  if (waitMs > 0) return waitMs
  for (const [at, count] of counts.entries()) await addOne(tx, count, rows[at] ?? null, now)
  return 0
}

async function addOne(tx: Tx, count: TryCount, before: Row | null, now: Date): Promise<void> {
  if (before === null) {
    await tx.signInTries.create({ data: { ...count, wrong: 1, lastAt: now } })
    return
  }
  const wrong = areTriesForgotten(before, now) ? 1 : before.wrong + 1
  const changed = await tx.signInTries.updateMany({
    where: { ...count, wrong: before.wrong, lastAt: before.lastAt },
    data: { wrong, lastAt: now },
  })
  if (changed.count !== 1) throw new CountedMeanwhile()
}

/** Made-up names must not fill the table: a day after its last try a count goes. */
export async function forgetOldTries(client: Db, now: Date): Promise<void> {
  await client.signInTries.deleteMany({ where: { lastAt: { lt: new Date(now.getTime() - triesForgottenMs) } } })
}

/**
 * The try was right. What counts this person at this place begins again; what counts an address or a name over many
 * places only loses this one try, or a person who signs in there now and then would clear the way for guesses.
 */
export async function takeTryBack(reader: Reader, counts: readonly TryCount[]): Promise<void> {
  for (const count of counts) {
    if (count.kind === 'address' || count.kind === 'name') {
      await reader.signInTries.updateMany({ where: { ...count, wrong: { gt: 0 } }, data: { wrong: { decrement: 1 } } })
    } else {
      await reader.signInTries.deleteMany({ where: count })
    }
  }
}

/** Every count of this person, by sign-in name or id; those of an address are another matter. */
const ofPerson = ({ id, signIn }: { readonly id: string; readonly signIn: string }) => ({ name: { in: [signIn, id] } })

/** What a person's own sign-in waits for at the moment: where from, how many were wrong, for how long. */
export async function waitsOf(reader: Reader, person: { readonly id: string; readonly signIn: string }, now: Date) {
  const rows = await reader.signInTries.findMany({
    where: ofPerson(person),
    orderBy: [{ lastAt: 'desc' }, { kind: 'asc' }, { place: 'asc' }],
    take: 20,
  })
  return rows.flatMap(({ kind, place, wrong, lastAt }) => {
    const waitMs = signInWaitMs(kind as TryKind, { wrong, lastAt }, now)
    return waitMs > 0 ? [{ kind: kind as TryKind, place: kind === 'here' ? place : '', wrong, waitMs }] : []
  })
}

/** The owner lifts what this person waits for, everywhere; with it goes what their addresses wait for. */
export async function liftWaits(tx: Tx, person: { readonly id: string; readonly signIn: string }): Promise<number> {
  const here = await tx.signInTries.findMany({ where: { ...ofPerson(person), kind: 'here' }, take: 1000 })
  const places = [...new Set(here.map(({ place }) => place))]
  await tx.signInTries.deleteMany({ where: { kind: 'address', name: '', place: { in: places } } })
  return (await tx.signInTries.deleteMany({ where: ofPerson(person) })).count
}
