import 'server-only'
import type { Whereabouts } from '@/lib/core/route/types'
import type { Reader } from './db'
import { pageOfRows, rowsOfPage, type Paged } from './paging'
import { byId, readTables, there, type Row } from './tables'

/** A visit as its tag label says it, and since when its head has been here. */
export type LabelVisit = Pick<Row<'Visit'>, 'id' | 'headId' | 'position' | 'side' | 'source' | 'cameWith'> & {
  readonly job: { readonly number: string }
  readonly head: {
    readonly chamberForm: string
    readonly casting: { readonly name: string } | null
    /** The oldest first. */
    readonly tags: readonly Pick<Row<'TagAssignment'>, 'number' | 'from' | 'to'>[]
  }
  /** When it was checked in; null: not yet. */
  readonly checkedInAt: Date | null
}

const heads = '(SELECT "headId" FROM "v")'
const tables = {
  Visit: '"id" IN (SELECT "id" FROM "v")',
  Job: '"id" IN (SELECT "jobId" FROM "v")',
  Head: `"id" IN ${heads}`,
  CastingRecord: `"id" IN (SELECT "castingId" FROM "Head" WHERE "id" IN ${heads})`,
  TagAssignment: `"headId" IN ${heads}`,
  VisitEvent: `"visitId" IN (SELECT "id" FROM "v") AND "kind" = 'tick' AND "stepId" = 'check-in'`,
}

/** These visits in the order of the ids, in one statement. */
async function labelVisits(reader: Reader, ids: readonly string[]): Promise<LabelVisit[]> {
  if (ids.length === 0) return []
  const marks = ids.map(() => '?').join(', ')
  const scope = `"v" AS (SELECT "id", "headId", "jobId" FROM "Visit" WHERE "id" IN (${marks}))`
  const rows = await readTables(reader, { sql: scope, params: ids }, tables)
  const [visits, jobs, headRows] = [byId(rows.Visit), byId(rows.Job), byId(rows.Head)]
  const castings = byId(rows.CastingRecord)
  const tags = rows.TagAssignment.sort((a, b) => a.from.getTime() - b.from.getTime())
  // The tick that stands: one that was taken back has a later one after it.
  const ticks = new Map(rows.VisitEvent.sort((a, b) => a.seq - b.seq).map(({ visitId, at }) => [visitId, at]))
  return ids.flatMap((id) => {
    const visit = visits.get(id)
    if (!visit) return []
    const { chamberForm, castingId } = there(headRows.get(visit.headId))
    return [
      {
        ...visit,
        job: there(jobs.get(visit.jobId)),
        head: {
          chamberForm,
          casting: castings.get(castingId ?? '') ?? null,
          tags: tags.filter(({ headId }) => headId === visit.headId),
        },
        checkedInAt: ticks.get(id) ?? null,
      },
    ]
  })
}

/** Under the shop's roof, or booked with a plate on and about to be checked in. */
const here: readonly Whereabouts[] = [
  'expected',
  'in house',
  'waiting for parts',
  'waiting for an answer',
  'held',
  'finished',
  'released',
]

/** The heads that are here and wear a tag, booked last first, a page at a time. */
export async function taggedVisitsHere(reader: Reader, page: number): Promise<Paged<LabelVisit>> {
  const visits = await reader.visit.findMany({
    where: { place: { whereabouts: { in: [...here] } }, head: { tags: { some: { to: null } } } },
    orderBy: { id: 'desc' },
    ...rowsOfPage(page),
    select: { id: true },
  })
  const { rows, more } = pageOfRows(visits)
  return { rows: await labelVisits(reader, idsOf(rows)), more }
}

export async function labelVisitsOfJob(reader: Reader, jobId: string): Promise<LabelVisit[]> {
  const visits = await reader.visit.findMany({ where: { jobId }, orderBy: { position: 'asc' }, select: { id: true } })
  return labelVisits(reader, idsOf(visits))
}

/** The head that wears each of these numbers now, else the one that wore it last. */
export async function headsOfTags(reader: Reader, numbers: readonly string[]): Promise<ReadonlyMap<string, string>> {
  const worn = await reader.tagAssignment.findMany({
    where: { number: { in: [...numbers] } },
    orderBy: { from: 'asc' },
    select: { number: true, headId: true, to: true },
  })
  const oldFirst = [...worn.filter(({ to }) => to !== null), ...worn.filter(({ to }) => to === null)]
  return new Map(oldFirst.map(({ number, headId }) => [number, headId]))
}

/** The newest visit of each of these heads. */
export async function newestLabelVisits(
  reader: Reader,
  headIds: readonly string[],
): Promise<ReadonlyMap<string, LabelVisit>> {
  const visits = await reader.visit.findMany({
    where: { headId: { in: [...headIds] } },
    orderBy: [{ createdAt: 'asc' }, { id: 'asc' }],
    select: { id: true, headId: true },
  })
  const newest = new Map(visits.map(({ id, headId }) => [headId, id]))
  return new Map((await labelVisits(reader, [...newest.values()])).map((visit) => [visit.headId, visit]))
}

const idsOf = (rows: readonly { readonly id: string }[]): string[] => rows.map(({ id }) => id)
