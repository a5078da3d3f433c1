import type { Actor, Role } from '@/lib/core/access/roles'
import type { Refusal } from '@/lib/core/errors'
import { RefusedError } from '@/lib/core/errors'
import type { Moment } from '@/lib/data/write'
import { bookJobSchema, emptyBooking, emptyHead, type BookJobForm, type HeadForm } from '@/lib/schemas/job'
import { bookJob, type BookedJob } from '@/lib/use-cases/jobs/book-job'
import type { TestDatabase } from '@/tests/setup/database'

/** Monday morning in the shop: 14:00 UTC is 8:00 in Chicago (UTC−6 in winter). */
export const monday = new Date('2026-03-02T14:00:00Z')

const person = (personId: string, name: string, roles: readonly Role[]): Actor => ({
  personId,
  name,
  roles,
  grants: [],
})

export const counter = person('p-counter', 'Odile Marsh', ['counter'])
export const otherCounter = person('p-counter-2', 'Bram Tolliver', ['counter'])
export const machinist = person('p-machinist', 'Ivo Penrose', ['machinist'])
export const owner = person('p-owner', 'Greta Sund', ['owner'])

export const casting = 'c-halden'
export const otherCasting = 'c-morrow'

/** A shop with people and two casting records, and nothing booked. */
export async function openShop({ client }: TestDatabase): Promise<void> {
  await client.shop.create({
    data: {
      id: 1,
      mode: 'shop',
      name: 'Quay Street Heads',
      address: '',
      phone: '',
      timeZone: 'America/Chicago',
      locale: 'en-US',
      currency: 'USD',
      currencyExponent: 2,
      paper: 'letter',
      createdAt: monday,
    },
  })
  await client.person.createMany({
    data: [counter, otherCounter, machinist, owner].map((actor) => ({
      id: actor.personId,
      name: actor.name,
      signIn: actor.personId,
      passwordHash: '',
      roles: actor.roles.join(','),
      grants: '',
      createdAt: monday,
    })),
  })
  await client.castingRecord.createMany({
    data: [
      { id: casting, name: 'Halden 4', material: 'iron' },
      { id: otherCasting, name: 'Morrow 3', material: 'aluminium' },
    ].map((record) => ({
      ...record,
      nameLower: record.name.toLowerCase(),
      chamberCount: 4,
      chamberShape: 'closed',
      deepEdge: 'exhaust',
      note: '',
      createdAt: monday,
    })),
  })
}

export const at = (now: Date, op?: string, hash = 'h'): Moment => (op ? { now, op: { id: op, hash } } : { now })

export const head = (over: Partial<HeadForm> = {}): HeadForm => ({
  ...emptyHead(),
  castingId: casting,
  ...over,
})

/** A pair for a new customer, 64 cc to 58 cc. */
export const booking = (over: Partial<BookJobForm> = {}): BookJobForm => ({
  ...emptyBooking(),
  customer: { id: '', name: 'Tamsin Rook', phone: '(555) 010-4477', email: '', address: '' },
  heads: [head({ side: 'left', stamp: 'TR 1', presentCc: '64' }), head({ side: 'right', presentCc: '64' })],
  targetCc: '58.0',
  promiseOn: '2026-03-20',
  ...over,
})

export const bookAsTyped = (
  over: Partial<BookJobForm> = {},
  moment: Moment = at(monday),
  actor = counter,
): Promise<BookedJob> => bookJob(actor, bookJobSchema.parse(booking(over)), moment)

/** Whoever is asked about is somebody else. */
export async function book(
  over: Partial<BookJobForm> = {},
  moment: Moment = at(monday),
  actor = counter,
): Promise<BookedJob> {
  try {
    return await bookAsTyped(over, moment, actor)
  } catch (error) {
    if (!(error instanceof RefusedError) || !error.refusal.alike) throw error
    const { customers, heads } = error.refusal.alike
    return bookAsTyped({ ...over, notThese: { customers: [...customers], heads: [...heads] } }, moment, actor)
  }
}

/** The refusal of something that must be refused. */
export async function refusalOf(
  work: Promise<unknown>,
): Promise<Refusal & { readonly fields: Readonly<Record<string, string>> }> {
  try {
    await work
  } catch (error) {
    if (error instanceof RefusedError) return { fields: {}, ...error.refusal }
    throw error
  }
  throw new Error('It was not refused.')
}
