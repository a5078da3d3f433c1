import 'server-only'
import { parseTag, tagText } from '@/lib/core/shop/tag-number'
import type { Prisma } from '@/prisma/generated/sqlite/client'
import type { Reader } from './db'

export type TrailEntry = {
  readonly seq: number
  readonly at: Date
  readonly actorId: string
  readonly action: string
  readonly subject: string
  readonly subjectId: string
  readonly jobId: string | null
  readonly visitId: string | null
  readonly changes: string
}

/** Whose changes, and of what time; null: everybody's, from the first to the last. */
export type TrailLimits = { readonly personId: string | null; readonly from: Date | null; readonly to: Date | null }

/** What a word typed into the trail's search may stand for. */
export type TrailSearch = {
  readonly actorIds: readonly string[]
  readonly jobIds: readonly string[]
  readonly visitIds: readonly string[]
  readonly subjectIds: readonly string[]
}

/** Newest first, `take` at a time, those before `before`; null: from the newest on, everything. */
export async function trailEntries(
  reader: Reader,
  asked: {
    readonly search: TrailSearch | null
    /** As the entries have them; an entry counts when it is one of these or what was searched for. */
    readonly actions: readonly string[]
    readonly limits: TrailLimits
    readonly before: number | null
    readonly take: number
  },
): Promise<TrailEntry[]> {
  const { search, actions, limits, before, take } = asked
  const newest = (where: Prisma.AuditEntryWhereInput) =>
    reader.auditEntry.findMany({
      where: {
        AND: [
          where,
          ...(before === null ? [] : [{ seq: { lt: before } }]),
          ...(limits.personId === null ? [] : [{ actorId: limits.personId }]),
          ...(limits.from === null ? [] : [{ at: { gte: limits.from } }]),
          ...(limits.to === null ? [] : [{ at: { lt: limits.to } }]),
        ],
      },
      orderBy: { seq: 'desc' },
      take,
    })
  if (search === null) return newest({})
  // One question an index: asked together, the database reads the whole trail.
  const found = [
    ...(await newest({ actorId: { in: [...search.actorIds] } })),
    ...(await newest({ jobId: { in: [...search.jobIds] } })),
    ...(await newest({ visitId: { in: [...search.visitIds] } })),
    ...(await newest({ subjectId: { in: [...search.subjectIds] } })),
    ...(await newest({ action: { in: [...actions] } })),
  ]
  const bySeq = new Map(found.map((entry) => [entry.seq, entry]))
  return [...bySeq.values()].toSorted((a, b) => b.seq - a.seq).slice(0, take)
}

/** Everything that a tag number, job number, name of a person, vendor or casting may mean. */
export async function trailSearch(reader: Reader, typed: string): Promise<TrailSearch> {
  const text = typed.trim()
  const tag = parseTag(tagText(text))
  const tags = await reader.tagAssignment.findMany({
    where: { number: tag.ok ? tag.value.number : text },
    select: { headId: true, head: { select: { visits: { select: { id: true } } } } },
  })
  const jobs = await reader.job.findMany({ where: { number: text }, select: { id: true } })
  const named = await namedLike(reader, text)
  return {
    actorIds: named.people,
    jobIds: jobs.map(({ id }) => id),
    visitIds: tags.flatMap(({ head }) => head.visits.map(({ id }) => id)),
    subjectIds: [...named.people, ...named.others, ...tags.map(({ headId }) => headId)],
  }
}

type Named = { readonly id: string; readonly name: string; readonly signIn?: string }
const select = { id: true, name: true } as const

/** A shop has a few dozen of these: compared here, so that upper and lower case are alike on every database. */
async function namedLike(reader: Reader, text: string): Promise<{ people: string[]; others: string[] }> {
  const wanted = text.toLowerCase()
  const idsOf = (rows: readonly Named[]) =>
    rows.filter((row) => row.name.toLowerCase().includes(wanted) || row.signIn === wanted).map(({ id }) => id)
  const people = await reader.person.findMany({ select: { ...select, signIn: true } })
  const vendors = await reader.vendor.findMany({ select })
  const castings = await reader.castingRecord.findMany({ select })
  const instruments = await reader.instrument.findMany({ select })
  return { people: idsOf(people), others: idsOf([...vendors, ...castings, ...instruments]) }
}

/** Everybody who may have changed something, by name. */
export const trailPeople = (reader: Reader) => reader.person.findMany({ select, orderBy: { name: 'asc' } })

/** Names to show in the place of ids: tags of visits, numbers of jobs, names of people and of what has a name. */
export async function trailNames(reader: Reader, entries: readonly TrailEntry[]): Promise<Map<string, string>> {
  const ids = (of: (entry: TrailEntry) => string | null) => [...new Set(entries.flatMap((entry) => of(entry) ?? []))]
  const subjects = (kind: string) => ids((entry) => (entry.subject === kind ? entry.subjectId : null))
  const actors = ids((entry) => entry.actorId)
  const people = [...actors, ...subjects('person')]
  const rows: Named[] = [
    ...(await tagsOf(
      reader,
      ids((entry) => entry.visitId),
    )),
    ...(await numbersOf(
      reader,
      ids((entry) => entry.jobId),
    )),
    ...(await named(people, (where) => reader.person.findMany({ where, select }))),
    ...(await linksOf(reader, actors)),
    ...(await named(subjects('vendor'), (where) => reader.vendor.findMany({ where, select }))),
    ...(await named(subjects('casting'), (where) => reader.castingRecord.findMany({ where, select }))),
    ...(await named(subjects('instrument'), (where) => reader.instrument.findMany({ where, select }))),
    ...(await priceItemsOf(reader, subjects('price-item'))),
  ]
  return new Map(rows.map(({ id, name }) => [id, name]))
}

/** Asked only when there is something to ask for. */
const named = async (ids: string[], ask: (where: { id: { in: string[] } }) => Promise<Named[]>): Promise<Named[]> =>
  ids.length === 0 ? [] : ask({ id: { in: ids } })

const tagsOf = (reader: Reader, ids: string[]) =>
  named(ids, async (where) => {
    const tags = { select: { number: true }, orderBy: { from: 'desc' }, take: 1 } as const
    const visits = await reader.visit.findMany({ where, select: { id: true, head: { select: { tags } } } })
    return visits.map(({ id, head }) => ({ id, name: head.tags[0]?.number ?? '' }))
  })

const numbersOf = (reader: Reader, ids: string[]) =>
  named(ids, async (where) => {
    const jobs = await reader.job.findMany({ where, select: { id: true, number: true } })
    return jobs.map(({ id, number }) => ({ id, name: number }))
  })

/** Whoever holds a link is nobody by name. */
const linksOf = (reader: Reader, ids: string[]) =>
  named(ids, async (where) => {
    const links = await reader.customerLink.findMany({ where, select: { id: true } })
    return links.map(({ id }) => ({ id, name: 'the customer, by link' }))
  })

const priceItemsOf = (reader: Reader, ids: string[]) =>
  named(ids, async (where) => {
    const items = await reader.priceItem.findMany({ where, select: { id: true, text: true } })
    return items.map(({ id, text }) => ({ id, name: text }))
  })
