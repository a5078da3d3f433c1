import 'server-only'
import { partsAsked } from '@/lib/core/find/fold'
import { parseTag, tagText } from '@/lib/core/shop/tag-number'
import type { Reader } from './db'
import { withParts } from './find'
import { readTables, type Row } from './tables'
import { beginsWith } from './text-range'

/** A head with the tags it wore and its newest visit. */
export type KnownHead = Pick<Row<'Head'>, 'id' | 'stamp' | 'marks' | 'castingId'> & {
  readonly casting: string
  /** The newest first. */
  readonly tags: readonly Pick<Row<'TagAssignment'>, 'number' | 'to'>[]
  /** Null: it was never booked. */
  readonly visit: {
    readonly id: string
    readonly whereabouts: string | null
    readonly jobNumber: string
    readonly promiseOn: string | null
    readonly customer: string
  } | null
}

const newestVisit = `(SELECT v."id" FROM "Visit" v WHERE v."headId" = h."id" ORDER BY v."createdAt" DESC, v."id" DESC LIMIT 1)`
const jobs = '(SELECT "jobId" FROM "Visit" WHERE "id" IN (SELECT "visitId" FROM "k"))'

const tables = {
  Head: '"id" IN (SELECT "headId" FROM "k")',
  CastingRecord: '"id" IN (SELECT "castingId" FROM "Head" WHERE "id" IN (SELECT "headId" FROM "k"))',
  TagAssignment: '"headId" IN (SELECT "headId" FROM "k")',
  Visit: '"id" IN (SELECT "visitId" FROM "k")',
  VisitPlace: '"visitId" IN (SELECT "visitId" FROM "k")',
  Job: `"id" IN ${jobs}`,
  CustomerContact: `"customerId" IN (SELECT "customerId" FROM "Job" WHERE "id" IN ${jobs})`,
}

/** These heads by their ids, in one statement. */
export async function knownHeads(reader: Reader, ids: readonly string[]): Promise<Map<string, KnownHead>> {
  if (ids.length === 0) return new Map()
  const scope = `"k" AS (SELECT h."id" AS "headId", ${newestVisit} AS "visitId"
    FROM "Head" h WHERE h."id" IN (${ids.map(() => '?').join(', ')}))`
  const rows = await readTables(reader, { sql: scope, params: ids }, tables)
  const visitOf = (headId: string): KnownHead['visit'] => {
    const visit = rows.Visit.find((one) => one.headId === headId)
    if (!visit) return null
    const job = rows.Job.find(({ id }) => id === visit.jobId)
    return {
      id: visit.id,
      whereabouts: rows.VisitPlace.find(({ visitId }) => visitId === visit.id)?.whereabouts ?? null,
      jobNumber: job?.number ?? '',
      promiseOn: job?.promiseOn ?? null,
      customer: rows.CustomerContact.find(({ customerId }) => customerId === job?.customerId)?.name ?? '',
    }
  }
  return new Map(
    rows.Head.map(({ id, stamp, marks, castingId }) => {
      const casting = rows.CastingRecord.find((one) => one.id === castingId)?.name ?? ''
      const tags = rows.TagAssignment.filter(({ headId }) => headId === id).sort(
        (a, b) => b.from.getTime() - a.from.getTime(),
      )
      return [id, { id, stamp, marks, castingId, casting, tags, visit: visitOf(id) }]
    }),
  )
}

/** These heads in the order of the ids, each once. */
async function inOrder(reader: Reader, ids: readonly string[]): Promise<KnownHead[]> {
  const different = [...new Set(ids)]
  const known = await knownHeads(reader, different)
  return different.flatMap((id) => known.get(id) ?? [])
}

/** Heads that wear or wore this tag (typed, or as the link a scanner reads), the newest wearer first. */
export async function headsWithTag(reader: Reader, text: string, take: number): Promise<KnownHead[]> {
  const tag = parseTag(tagText(text))
  return tag.ok ? inOrder(reader, await wearersOf(reader, { number: tag.value.number }, take)) : []
}

/**
 * Heads whose tag begins so first, then those whose tag is this number in another series, then those with the text, or else
 * all its words, in their stamp, casting marks or casting's name.
 */
export async function headsLike(reader: Reader, text: string, take: number): Promise<KnownHead[]> {
  const worn = await wearersOf(reader, { number: beginsWith(text.trim().toUpperCase()) }, take)
  const numbered = /^\d{1,9}$/.test(text.trim())
    ? await wearersOf(reader, { sortNumber: Number(text.trim()) }, take)
    : []
  const marked = await headsMarked(reader, text, take)
  return inOrder(reader, [...new Set([...worn, ...numbered, ...marked])].slice(0, take))
}

async function wearersOf(
  reader: Reader,
  where: { number: string | { readonly gte: string; readonly lt: string } } | { sortNumber: number },
  take: number,
): Promise<string[]> {
  const worn = await reader.tagAssignment.findMany({
    where,
    orderBy: { from: 'desc' },
    take,
    select: { headId: true },
  })
  return worn.map(({ headId }) => headId)
}

/** "TR 2" is the head with that stamp; words apart are looked for only when no head has them together. */
async function headsMarked(reader: Reader, text: string, take: number): Promise<string[]> {
  const parts = partsAsked(text)
  const together = await withParts(reader, 'HeadText', partsAsked(text.replace(/\s+/g, '')), take)
  return together.length > 0 || parts.length < 2 ? together : withParts(reader, 'HeadText', parts, take)
}
