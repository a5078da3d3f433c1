import 'server-only'
import type { Prisma } from '@/prisma/generated/sqlite/client'
import { noRepeats, type RepeatTally } from '@/lib/core/chamber/repeatability'
import { repeatTotalId } from './cc-repeats'
import type { Reader } from './db'
import { defaultSettings, settingsOf, type CurrentSettings } from './settings'
import { readTables, there, type Row, type Rows, type Scope, type TableName, type Wanted } from './tables'

/**
 * Everything that is known of a visit, in the shape that Prisma gives it with this `include`; `readVisits` reads the same
 * in two statements, a test holds the two against each other.
 */
export const visitInclude = {
  job: {
    include: { engine: { include: { figures: { orderBy: { id: 'asc' } } } }, customer: { include: { contact: true } } },
  },
  head: {
    include: {
      casting: {
        include: {
          figures: { orderBy: { id: 'asc' } },
          outlines: { orderBy: { id: 'asc' } },
          bolts: { orderBy: { id: 'asc' } },
        },
      },
      tags: { orderBy: { id: 'asc' } },
    },
  },
  pair: {
    include: {
      visits: {
        select: {
          id: true,
          headId: true,
          position: true,
          head: { select: { tags: { orderBy: { id: 'asc' } } } },
          holds: { orderBy: { id: 'asc' } },
        },
        orderBy: { position: 'asc' },
      },
      plans: {
        include: { exceptions: { orderBy: { id: 'asc' } }, acceptances: { orderBy: { id: 'asc' } } },
        orderBy: { number: 'desc' },
      },
    },
  },
  ordered: { orderBy: { id: 'asc' } },
  events: { orderBy: { seq: 'asc' } },
  readings: { include: { points: { orderBy: { id: 'asc' } } }, orderBy: [{ eventSeq: 'asc' }, { id: 'asc' }] },
  findings: { orderBy: { id: 'asc' } },
  waits: { orderBy: { id: 'asc' } },
  holds: { orderBy: { id: 'asc' } },
  waivers: { orderBy: { id: 'asc' } },
  releases: { orderBy: { revision: 'desc' } },
  returned: true,
  handOver: true,
  outside: { include: { order: { include: { vendor: true } } }, orderBy: { id: 'asc' } },
  photos: { orderBy: { id: 'asc' } },
  place: true,
  ccRepeats: true,
} as const satisfies Prisma.VisitInclude

export type VisitRecord = Prisma.VisitGetPayload<{ include: typeof visitInclude }>

/** Which visits: by their ids, or all of one job, of one pair, of the pairs of these visits, of one head. */
export type WhichVisits =
  | { readonly ids: readonly string[] }
  | { readonly jobId: string }
  | { readonly pairId: string }
  | { readonly pairsOf: readonly string[] }
  | { readonly headId: string }

export type ReadVisits = {
  /** By their place on the job, then by age. */
  readonly visits: readonly VisitRecord[]
  /** The limits and tables that a visit is held to: those of the day it was booked, or that it was moved to since. */
  readonly settingsOf: (visit: { readonly rulesVersion: number }) => CurrentSettings
  /** Those of today: what the shop calls its stations, say. */
  readonly today: CurrentSettings
  /** All repeats of the shop, of every head. */
  readonly shopRepeats: RepeatTally
  /** The last visit before this one on which this head was cut; null: there is none on record. */
  readonly cutBefore: (visit: VisitRecord) => string | null
}

/** In two statements, however many visits: what stands once a head, then its log and its readings. */
export async function readVisits(reader: Reader, which: WhichVisits): Promise<ReadVisits> {
  const scope = scopeOf(which)
  const head = await readTables(reader, scope, headTables)
  const log = await readTables(reader, scope, logTables)
  const settings = head.Settings.map(settingsOf).sort((a, b) => a.version - b.version)
  const byVersion = new Map(settings.map((one) => [one.version, one]))
  return {
    visits: recordsOf(which, { ...head, ...log }),
    settingsOf: ({ rulesVersion }) => byVersion.get(rulesVersion) ?? defaultSettings,
    today: settings.at(-1) ?? defaultSettings,
    shopRepeats: head.CcRepeatTotal[0] ?? noRepeats,
    cutBefore: (visit) => cutBefore(head.ShopCut, visit),
  }
}

/** Numbers of events go up over all visits: a cut made before this visit's first event was made on an earlier one. */
function cutBefore(cuts: readonly Row<'ShopCut'>[], { id, headId, events }: VisitRecord): string | null {
  const first = events[0]?.seq ?? Infinity
  const earlier = cuts.filter((cut) => cut.headId === headId && cut.visitId !== id && cut.seq < first)
  return earlier.toSorted((a, b) => a.seq - b.seq).at(-1)?.visitId ?? null
}

const visitColumns = '"id", "jobId", "headId", "pairId", "rulesVersion"'

function conditionOf(which: WhichVisits): Scope {
  if ('ids' in which) {
    return { sql: `"id" IN (${marksOf(which.ids)})`, params: which.ids }
  }
  if ('jobId' in which) return { sql: '"jobId" = ?', params: [which.jobId] }
  if ('pairId' in which) return { sql: '"pairId" = ?', params: [which.pairId] }
  if ('headId' in which) return { sql: '"headId" = ?', params: [which.headId] }
  const pairs = `SELECT "pairId" FROM "Visit" WHERE "id" IN (${marksOf(which.pairsOf)})`
  return { sql: `"pairId" IN (${pairs})`, params: which.pairsOf }
}

/** Of none nothing is found: no id is NULL, and the index knows it. With 1 = 0 SQLite plans to read all visits. */
const marksOf = (ids: readonly string[]): string => (ids.length === 0 ? 'NULL' : ids.map(() => '?').join(', '))

/** `v`: the visits asked for; `p`: they and the others of their pairs. */
function scopeOf(which: WhichVisits): Scope {
  const { sql, params } = conditionOf(which)
  const asked = `"v" AS (SELECT ${visitColumns} FROM "Visit" WHERE ${sql})`
  const pairs = `"p" AS (SELECT "id", "headId" FROM "Visit" WHERE "pairId" IN (SELECT "pairId" FROM "v"))`
  return { sql: `${asked}, ${pairs}`, params }
}

const ofVisits = '"visitId" IN (SELECT "id" FROM "v")'
const jobs = '(SELECT "jobId" FROM "v")'
const castings = '(SELECT "castingId" FROM "Head" WHERE "id" IN (SELECT "headId" FROM "v"))'
const pairs = '(SELECT "pairId" FROM "v")'
const plans = `(SELECT "id" FROM "PlanVersion" WHERE "pairId" IN ${pairs})`
const orders = `(SELECT "orderId" FROM "OutsideOrderVisit" WHERE ${ofVisits})`

const headTables = {
  Visit: `"pairId" IN ${pairs}`,
  Job: `"id" IN ${jobs}`,
  Customer: `"id" IN (SELECT "customerId" FROM "Job" WHERE "id" IN ${jobs})`,
  CustomerContact: `"customerId" IN (SELECT "customerId" FROM "Job" WHERE "id" IN ${jobs})`,
  Engine: `"jobId" IN ${jobs}`,
  EngineFigure: `"engineId" IN (SELECT "id" FROM "Engine" WHERE "jobId" IN ${jobs})`,
  Head: '"id" IN (SELECT "headId" FROM "v")',
  TagAssignment: '"headId" IN (SELECT "headId" FROM "p")',
  CastingRecord: `"id" IN ${castings}`,
  CastingFigure: `"castingId" IN ${castings}`,
  CastingOutline: `"castingId" IN ${castings}`,
  CastingBolt: `"castingId" IN ${castings}`,
  Pair: `"id" IN ${pairs}`,
  PlanVersion: `"pairId" IN ${pairs}`,
  PlanException: `"planId" IN ${plans}`,
  PlanAcceptance: `"planId" IN ${plans}`,
  OrderedLine: ofVisits,
  Finding: ofVisits,
  PartsWait: ofVisits,
  Hold: '"visitId" IN (SELECT "id" FROM "p")',
  Waiver: ofVisits,
  Release: ofVisits,
  ReturnedAsIs: ofVisits,
  HandOver: ofVisits,
  OutsideOrderVisit: ofVisits,
  OutsideOrder: `"id" IN ${orders}`,
  Vendor: `"id" IN (SELECT "vendorId" FROM "OutsideOrder" WHERE "id" IN ${orders})`,
  Photo: ofVisits,
  VisitPlace: ofVisits,
  CcRepeats: ofVisits,
  ShopCut: '"headId" IN (SELECT "headId" FROM "v")',
  CcRepeatTotal: `"id" = '${repeatTotalId}'`,
  Settings: '"version" IN (SELECT "rulesVersion" FROM "v") OR "version" = (SELECT MAX("version") FROM "Settings")',
} satisfies Partial<Wanted<TableName>>

const logTables = {
  VisitEvent: ofVisits,
  ReadingSet: ofVisits,
  Reading: `"setId" IN (SELECT "id" FROM "ReadingSet" WHERE ${ofVisits})`,
} satisfies Partial<Wanted<TableName>>

type Tables = Rows<keyof typeof headTables | keyof typeof logTables>

function recordsOf(which: WhichVisits, tables: Tables): VisitRecord[] {
  const family = familiesOf(tables)
  return tables.Visit.filter(isAsked(which, tables.Visit))
    .sort((a, b) => a.position - b.position || a.createdAt.getTime() - b.createdAt.getTime())
    .map((visit) => recordOf(visit, family))
}

/** The table brings the others of each pair along. */
function isAsked(which: WhichVisits, visits: readonly Row<'Visit'>[]): (visit: Row<'Visit'>) => boolean {
  if ('ids' in which) {
    const ids = new Set(which.ids)
    return ({ id }) => ids.has(id)
  }
  if ('jobId' in which) return ({ jobId }) => jobId === which.jobId
  if ('headId' in which) return ({ headId }) => headId === which.headId
  if ('pairId' in which) return ({ pairId }) => pairId === which.pairId
  const asked = new Set(which.pairsOf)
  const pairs = new Set(visits.filter(({ id }) => asked.has(id)).map(({ pairId }) => pairId))
  return ({ pairId }) => pairs.has(pairId)
}

/** The rows of a table by what they belong to, each family in its order. */
function families<T>(
  rows: readonly T[],
  ownerOf: (row: T) => string,
  order: (a: T, b: T) => number,
): (owner: string) => T[] {
  const groups = new Map<string, T[]>()
  for (const row of rows.toSorted(order)) {
    const owner = ownerOf(row)
    const group = groups.get(owner)
    if (group) group.push(row)
    else groups.set(owner, [row])
  }
  return (owner) => groups.get(owner) ?? []
}

/** In the order of ids, which is that of their making. */
const grouped = <T extends { readonly id: string }>(rows: readonly T[], ownerOf: (row: T) => string) =>
  families(rows, ownerOf, (a, b) => (a.id < b.id ? -1 : 1))

function single<T>(rows: readonly T[], keyOf: (row: T) => string): (key: string) => T | null {
  const byKey = new Map(rows.map((row) => [keyOf(row), row]))
  return (key) => byKey.get(key) ?? null
}

const visitIdOf = (row: { readonly visitId: string }): string => row.visitId
const idOf = (row: { readonly id: string }): string => row.id

type Families = ReturnType<typeof familiesOf>

function familiesOf(tables: Tables) {
  return {
    job: single(tables.Job, idOf),
    customer: single(tables.Customer, idOf),
    contact: single(tables.CustomerContact, (row) => row.customerId),
    engine: single(tables.Engine, (row) => row.jobId),
    engineFigures: grouped(tables.EngineFigure, (row) => row.engineId),
    head: single(tables.Head, idOf),
    tags: grouped(tables.TagAssignment, (row) => row.headId),
    casting: single(tables.CastingRecord, idOf),
    castingFigures: grouped(tables.CastingFigure, (row) => row.castingId),
    outlines: grouped(tables.CastingOutline, (row) => row.castingId),
    bolts: grouped(tables.CastingBolt, (row) => row.castingId),
    pair: single(tables.Pair, idOf),
    pairVisits: grouped(tables.Visit, (row) => row.pairId),
    plans: grouped(tables.PlanVersion, (row) => row.pairId),
    exceptions: grouped(tables.PlanException, (row) => row.planId),
    acceptances: grouped(tables.PlanAcceptance, (row) => row.planId),
    ordered: grouped(tables.OrderedLine, visitIdOf),
    findings: grouped(tables.Finding, visitIdOf),
    waits: grouped(tables.PartsWait, visitIdOf),
    holds: grouped(tables.Hold, visitIdOf),
    waivers: grouped(tables.Waiver, visitIdOf),
    releases: grouped(tables.Release, visitIdOf),
    returned: single(tables.ReturnedAsIs, visitIdOf),
    handOver: single(tables.HandOver, visitIdOf),
    outside: grouped(tables.OutsideOrderVisit, visitIdOf),
    order: single(tables.OutsideOrder, idOf),
    vendor: single(tables.Vendor, idOf),
    photos: grouped(tables.Photo, visitIdOf),
    place: single(tables.VisitPlace, visitIdOf),
    ccRepeats: single(tables.CcRepeats, visitIdOf),
    events: families(tables.VisitEvent, visitIdOf, (a, b) => a.seq - b.seq),
    readings: grouped(tables.ReadingSet, (row) => row.visitId ?? ''),
    points: grouped(tables.Reading, (row) => row.setId),
  }
}

function recordOf(visit: Row<'Visit'>, family: Families): VisitRecord {
  const { id } = visit
  return {
    ...visit,
    job: jobOf(there(family.job(visit.jobId)), family),
    head: headOf(there(family.head(visit.headId)), family),
    pair: pairOf(there(family.pair(visit.pairId)), family),
    ordered: family.ordered(id),
    events: family.events(id),
    readings: family
      .readings(id)
      .map((set) => ({ ...set, points: family.points(set.id) }))
      .sort((a, b) => a.eventSeq - b.eventSeq),
    findings: family.findings(id),
    waits: family.waits(id),
    holds: family.holds(id),
    waivers: family.waivers(id),
    releases: family.releases(id).sort((a, b) => b.revision - a.revision),
    returned: family.returned(id),
    handOver: family.handOver(id),
    outside: family.outside(id).map((line) => {
      const order = there(family.order(line.orderId))
      return { ...line, order: { ...order, vendor: there(family.vendor(order.vendorId)) } }
    }),
    photos: family.photos(id),
    place: family.place(id),
    ccRepeats: family.ccRepeats(id),
  }
}

function jobOf(job: Row<'Job'>, family: Families): VisitRecord['job'] {
  const engine = family.engine(job.id)
  return {
    ...job,
    engine: engine && { ...engine, figures: family.engineFigures(engine.id) },
    customer: { ...there(family.customer(job.customerId)), contact: family.contact(job.customerId) },
  }
}

function headOf(head: Row<'Head'>, family: Families): VisitRecord['head'] {
  const casting = head.castingId === null ? null : family.casting(head.castingId)
  return {
    ...head,
    casting: casting && {
      ...casting,
      figures: family.castingFigures(casting.id),
      outlines: family.outlines(casting.id),
      bolts: family.bolts(casting.id),
    },
    tags: family.tags(head.id),
  }
}

function pairOf(pair: Row<'Pair'>, family: Families): VisitRecord['pair'] {
  return {
    ...pair,
    visits: family
      .pairVisits(pair.id)
      .map(({ id, headId, position }) => ({
        id,
        headId,
        position,
        head: { tags: family.tags(headId) },
        holds: family.holds(id),
      }))
      .sort((a, b) => a.position - b.position),
    plans: family
      .plans(pair.id)
      .map((plan) => ({ ...plan, exceptions: family.exceptions(plan.id), acceptances: family.acceptances(plan.id) }))
      .sort((a, b) => b.number - a.number),
  }
}
