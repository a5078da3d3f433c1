import 'server-only'
import { parseTag, tagText } from '@/lib/core/shop/tag-number'
import type { Prisma } from '@/prisma/generated/sqlite/client'
import type { Reader } from './db'
import { readTables } from './tables'

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

/** Names of each kind that a text is compared with, the newest. */
const mostCompared = 1000

type Meant = { readonly kind: string; readonly id: string; readonly name: string; readonly signIn: string }

/**
 * Everything that a tag number, job number, name of a person, vendor, casting or instrument may mean. A shop has a few dozen
 * names: compared here, so that upper and lower case are alike on every database.
 */
export async function trailSearch(reader: Reader, typed: string): Promise<TrailSearch> {
  const text = typed.trim()
  const tag = parseTag(tagText(text))
  const number = tag.ok ? tag.value.number : text
  const meant = await reader.$queryRaw<Meant[]>`
    SELECT 'head' AS "kind", "headId" AS "id", '' AS "name", '' AS "signIn" FROM "TagAssignment" WHERE "number" = ${number}
    UNION ALL
    SELECT 'visit', v."id", '', '' FROM "TagAssignment" t JOIN "Visit" v ON v."headId" = t."headId"
      WHERE t."number" = ${number}
    UNION ALL SELECT 'job', "id", '', '' FROM "Job" WHERE "number" = ${text}
    UNION ALL SELECT * FROM (
      SELECT 'person', "id", "name", "signIn" FROM "Person" ORDER BY "id" DESC LIMIT ${mostCompared}) "people"
    UNION ALL SELECT * FROM (
      SELECT 'other', "id", "name", '' FROM "Vendor" ORDER BY "id" DESC LIMIT ${mostCompared}) "vendors"
    UNION ALL SELECT * FROM (
      SELECT 'other', "id", "name", '' FROM "CastingRecord" ORDER BY "id" DESC LIMIT ${mostCompared}) "castings"
    UNION ALL SELECT * FROM (
      SELECT 'other', "id", "name", '' FROM "Instrument" ORDER BY "id" DESC LIMIT ${mostCompared}) "instruments"
    UNION ALL SELECT * FROM (
      SELECT 'other', "id", "name", '' FROM "Tablet" ORDER BY "id" DESC LIMIT ${mostCompared}) "tablets"`
  const wanted = text.toLowerCase()
  const isNamed = ({ kind, name, signIn }: Meant) =>
    (kind !== 'person' && kind !== 'other') || name.toLowerCase().includes(wanted) || signIn === wanted
  const found = meant.filter(isNamed)
  const idsOf = (...kinds: string[]) => found.filter(({ kind }) => kinds.includes(kind)).map(({ id }) => id)
  return {
    actorIds: idsOf('person'),
    jobIds: idsOf('job'),
    visitIds: idsOf('visit'),
    subjectIds: idsOf('person', 'other', 'head'),
  }
}

const subjects = (kind: string): string => `"id" IN (SELECT "subjectId" FROM "e" WHERE "subject" = '${kind}')`

const tables = {
  Person: `"id" IN (SELECT "actorId" FROM "e") OR "id" IN (SELECT "subjectId" FROM "e") OR "id" IN (SELECT "id" FROM "p")`,
  Visit: '"id" IN (SELECT "visitId" FROM "e")',
  TagAssignment: '"headId" IN (SELECT "headId" FROM "Visit" WHERE "id" IN (SELECT "visitId" FROM "e"))',
  Job: '"id" IN (SELECT "jobId" FROM "e")',
  CustomerLink: '"id" IN (SELECT "actorId" FROM "e")',
  Vendor: subjects('vendor'),
  CastingRecord: subjects('casting'),
  Instrument: subjects('instrument'),
  Tablet: subjects('tablet'),
  PriceItem: subjects('price-item'),
  TaxRate: subjects('tax-rate'),
}

export type TrailNames = {
  /** Names to show in the place of ids: tags of visits, numbers of jobs, names of people and of what has a name. */
  readonly names: ReadonlyMap<string, string>
  /** Who may have changed something, by name: those in use first, whoever is asked for, and who stands in the entries. */
  readonly people: readonly { readonly id: string; readonly name: string }[]
}

/** People to pick from; others are found by their name in the search. */
const peopleListed = 200

/** In one statement. `personId`: who was picked; null: everybody. */
export async function trailNames(
  reader: Reader,
  entries: readonly TrailEntry[],
  personId: string | null,
): Promise<TrailNames> {
  const marks = entries.length === 0 ? 'NULL' : entries.map(() => '?').join(', ')
  const scope = `"e" AS (
    SELECT "actorId", "subject", "subjectId", "jobId", "visitId" FROM "AuditEntry" WHERE "seq" IN (${marks})), "first" AS (
    SELECT "id" FROM "Person" ORDER BY CASE WHEN "retiredAt" IS NULL THEN 0 ELSE 1 END, "name" LIMIT ${peopleListed}),
    "p" AS (SELECT "id" FROM "first" UNION SELECT CAST(? AS TEXT))`
  const params = [...entries.map(({ seq }) => seq), personId ?? '']
  const rows = await readTables(reader, { sql: scope, params }, tables)
  const tags = rows.TagAssignment.sort((a, b) => a.from.getTime() - b.from.getTime())
  const lastWorn = new Map(tags.map(({ headId, number }) => [headId, number]))
  const people = rows.Person.map(({ id, name }) => ({ id, name })).sort((a, b) => (a.name < b.name ? -1 : 1))
  const named = [
    ...rows.Visit.map(({ id, headId }) => ({ id, name: lastWorn.get(headId) ?? '' })),
    ...rows.Job.map(({ id, number }) => ({ id, name: number })),
    ...people,
    // Whoever holds a link is nobody by name.
    ...rows.CustomerLink.map(({ id }) => ({ id, name: 'the customer, by link' })),
    { id: 'mail', name: 'the mail server' },
    { id: 'console', name: 'a command at the shop’s computer' },
    ...[...rows.Vendor, ...rows.CastingRecord, ...rows.Instrument, ...rows.Tablet, ...rows.TaxRate],
    ...rows.PriceItem.map(({ id, text }) => ({ id, name: text })),
  ]
  return { names: new Map(named.map(({ id, name }) => [id, name])), people }
}
