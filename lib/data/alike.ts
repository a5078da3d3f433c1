import 'server-only'
import { namesResemble, localFigures, phonesResemble } from '@/lib/core/customers/alike'
import { RefusedError } from '@/lib/core/errors'
import { foldedWords } from '@/lib/core/find/fold'
import { nameInOrder } from '@/lib/core/find/texts'
import { phoneCountry } from '@/lib/core/shop/country'
import { parseTag } from '@/lib/core/shop/tag-number'
import { Prisma } from '@/prisma/generated/sqlite/client'
import type { Reader } from './db'
import { withParts } from './find'
import { knownHeads, type KnownHead } from './known-heads'
import { readPhone } from './phone'
import { shopOf } from './shop'

export type TypedCustomer = {
  readonly id: string
  readonly name: string
  readonly phone: string
  readonly email: string
}
export type TypedHead = { readonly headId: string; readonly stamp: string; readonly tag: string }

/** Of heads as they are booked: what may be on record; a tag as it is hung. */
export const headsTyped = (
  heads: readonly {
    readonly headId: string
    readonly stamp: string
    readonly tag: { readonly number: string } | null
  }[],
): TypedHead[] => heads.map(({ headId, stamp, tag }) => ({ headId, stamp, tag: tag?.number ?? '' }))

export type AlikeBy = 'phone' | 'email' | 'name'

/** A customer on record whom what was typed may be. */
export type AlikeCustomer = {
  readonly id: string
  readonly name: string
  readonly phone: string
  readonly email: string
  readonly address: string
  readonly by: AlikeBy
  /** The newest job; '' none. */
  readonly lastJob: string
}

const mostAsked = 6
const mostOfEach = 50

/**
 * Customers on record whom a new one may be: the same telephone number or mail address first, then a name like it. None
 * for one who was picked from the record.
 */
export async function customersAlike(reader: Reader, typed: TypedCustomer): Promise<AlikeCustomer[]> {
  if (typed.id !== '') return []
  const { e164, digits } = readPhone(typed.phone, phoneCountry(await shopOf(reader)))
  const ids = new Set<string>()
  for (const parts of [...phoneParts(e164, digits), ...nameParts(typed.name)]) {
    for (const id of await withParts(reader, 'CustomerText', parts, mostOfEach)) ids.add(id)
  }
  const named = { nameLower: nameInOrder(typed.name) }
  const contacts = await reader.customerContact.findMany({
    where: {
      OR: [
        { customerId: { in: [...ids] } },
        ...(named.nameLower === '' ? [] : [named]),
        ...(typed.email === '' ? [] : [{ email: typed.email }]),
      ],
      blankedAt: null,
      customer: { mergedIntoId: null },
    },
    take: mostOfEach * 4,
  })
  const found = contacts.flatMap((contact) => {
    const by = whyAlike(typed, { e164, digits }, contact)
    if (by === null) return []
    const { customerId: id, name, phone, email, address } = contact
    return [{ id, name, phone, email, address, by }]
  })
  const rank: readonly AlikeBy[] = ['phone', 'email', 'name']
  const asked = found.toSorted((a, b) => rank.indexOf(a.by) - rank.indexOf(b.by)).slice(0, mostAsked)
  const lastJobs = await lastJobsOf(
    reader,
    asked.map(({ id }) => id),
  )
  return asked.map((one) => ({ ...one, lastJob: lastJobs.get(one.id) ?? '' }))
}

/** The number of each one's newest job; who has none is left out. One statement. */
async function lastJobsOf(reader: Reader, customerIds: readonly string[]): Promise<ReadonlyMap<string, string>> {
  if (customerIds.length === 0) return new Map()
  const rows = await reader.$queryRaw<{ id: string; number: string | null }[]>`
    SELECT c."id", (SELECT j."number" FROM "Job" j WHERE j."customerId" = c."id"
      ORDER BY j."createdAt" DESC, j."id" DESC LIMIT 1) AS "number"
    FROM "Customer" c WHERE c."id" IN (${Prisma.join([...customerIds])})`
  return new Map(rows.flatMap(({ id, number }) => (number === null ? [] : [[id, number] as const])))
}

type Contact = {
  readonly name: string
  readonly email: string
  readonly phoneE164: string
  readonly phoneDigits: string
  readonly otherPhoneE164: string
  readonly otherPhoneDigits: string
}

function whyAlike(typed: TypedCustomer, phone: { e164: string; digits: string }, contact: Contact): AlikeBy | null {
  const theirs = [contact.phoneE164, contact.otherPhoneE164]
  const isNumber =
    (phone.e164 !== '' && theirs.includes(phone.e164)) ||
    [contact.phoneDigits, contact.otherPhoneDigits].some((digits) => phonesResemble(phone.digits, digits))
  if (isNumber) return 'phone'
  if (typed.email !== '' && typed.email.toLowerCase() === contact.email.toLowerCase()) return 'email'
  return namesResemble(typed.name, contact.name) ? 'name' : null
}

/** By the number's end, which every form of it has. */
function phoneParts(e164: string, digits: string): string[][] {
  const figures = e164 === '' ? digits : e164.replace(/\D/g, '')
  return figures.length < localFigures ? [] : [[figures.slice(-localFigures)]]
}

/** One word as it is with the beginning of another, and the beginnings of all: a slip may be in any one of them. */
function nameParts(name: string): string[][] {
  const found = foldedWords(name)
    .filter((word) => word.length > 1)
    .slice(0, 4)
  if (found.length < 2) return found.map((word) => [startOf(word, 4)])
  const pairs = found.flatMap((word) =>
    found.filter((other) => other !== word).map((other) => [word.length < 3 ? ` ${word}` : word, startOf(other, 2)]),
  )
  return [...pairs, found.map((word) => startOf(word, 3)), [found.join('')]]
}

const startOf = (word: string, letters: number): string => ` ${[...word].slice(0, letters).join('')}`

/** A head on record that a new one of the booking, the `at`th, may be. */
export type AlikeHead = { readonly at: number; readonly by: 'tag' | 'stamp'; readonly head: KnownHead }

/** Heads on record with the tag (worn or taken off) or the stamp of a head that was not picked from the record. */
export async function headsAlike(reader: Reader, typed: readonly TypedHead[]): Promise<AlikeHead[]> {
  const found: { at: number; by: 'tag' | 'stamp'; headId: string }[] = []
  for (const [at, head] of typed.entries()) {
    if (head.headId !== '') continue
    for (const headId of await headsWithTyped(reader, head.tag)) found.push({ at, by: 'tag', headId })
    for (const headId of await headsStamped(reader, head.stamp)) found.push({ at, by: 'stamp', headId })
  }
  const known = await knownHeads(reader, [...new Set(found.map(({ headId }) => headId))])
  const once = new Map(found.toReversed().map((one) => [`${one.at} ${one.headId}`, one]))
  return [...once.values()].toReversed().flatMap(({ at, by, headId }) => {
    const head = known.get(headId)
    return head ? [{ at, by, head }] : []
  })
}

async function headsWithTyped(reader: Reader, text: string): Promise<string[]> {
  const tag = parseTag(text)
  if (text.trim() === '' || !tag.ok) return []
  const worn = await reader.tagAssignment.findMany({
    where: { number: tag.value.number },
    orderBy: { from: 'desc' },
    take: mostAsked,
    select: { headId: true },
  })
  return worn.map(({ headId }) => headId)
}

const runTogether = (text: string): string => foldedWords(text).join('')

async function headsStamped(reader: Reader, stamp: string): Promise<string[]> {
  const asked = runTogether(stamp)
  if (asked === '') return []
  const ids = await withParts(reader, 'HeadText', [asked.length < 3 ? ` ${asked}` : asked])
  const heads = await reader.head.findMany({ where: { id: { in: ids } }, select: { id: true, stamp: true } })
  const same = new Set(heads.filter((head) => runTogether(head.stamp) === asked).map(({ id }) => id))
  return ids.filter((id) => same.has(id)).slice(0, mostAsked)
}

export type Alike = { readonly customers: readonly AlikeCustomer[]; readonly heads: readonly AlikeHead[] }
type Typed = { readonly customer: TypedCustomer; readonly heads: readonly TypedHead[] }
type Answered = { readonly customers: readonly string[]; readonly heads: readonly string[] }

/** What a booking may name that is on record, but for those of which somebody said that it is another. */
export async function alikeTo(reader: Reader, typed: Typed, notThese: Answered): Promise<Alike> {
  const customers = await customersAlike(reader, typed.customer)
  const heads = await headsAlike(reader, typed.heads)
  return {
    customers: customers.filter(({ id }) => !notThese.customers.includes(id)),
    heads: heads.filter(({ head }) => !notThese.heads.includes(head.id)),
  }
}

/**
 * Refuses what resembles a customer or a head on record, until it is said which it is. `refusal.alike` holds the ids: the
 * form shows them (`app/_components/is-it`) and sends those that it is not as `notThese`, or the one that it is as
 * `customer.id` or `heads[n].headId`.
 */
export async function refuseAlike(reader: Reader, typed: Typed, notThese: Answered): Promise<void> {
  const { customers, heads } = await alikeTo(reader, typed, notThese)
  if (customers.length + heads.length === 0) return
  const fields: Record<string, string> = {}
  const [customer] = customers
  if (customer) fields['customer.name'] = `Is it ${customer.name}? Say yes or no.`
  for (const { at, by, head } of heads.toReversed()) {
    fields[`heads.${at}.${by}`] = `Is it the head ${headSaid(head)}? Say yes or no.`
  }
  throw new RefusedError({
    code: 'ambiguous',
    message: 'This looks like somebody or something on record. Say whether it is.',
    fields,
    alike: { customers: customers.map(({ id }) => id), heads: heads.map(({ head }) => head.id) },
  })
}

const headSaid = ({ stamp, tags, visit }: KnownHead): string =>
  [tags[0]?.number ?? '', stamp, visit ? `of job ${visit.jobNumber}` : ''].filter((part) => part !== '').join(', ')
