import 'server-only'
import type { Reader } from './db'

export type LastChange = { readonly by: string; readonly at: Date }

/** Who changed a record last, for the page that shows it and for a conflict over it. */
export async function lastChange(
  reader: Reader,
  subject: string,
  subjectId: string,
): Promise<LastChange | null> {
  const entry = await reader.auditEntry.findFirst({
    where: { subject, subjectId },
    orderBy: { seq: 'desc' },
    select: { at: true, actorId: true },
  })
  if (!entry) return null
  const person = await reader.person.findUnique({ where: { id: entry.actorId }, select: { name: true } })
  return { by: person?.name ?? '', at: entry.at }
}

/** Field → what it was and what it is now, for those that differ. */
export function changesBetween(
  before: Readonly<Record<string, unknown>>,
  after: Readonly<Record<string, unknown>>,
): Record<string, { from: unknown; to: unknown }> {
  const differing = Object.entries(after).filter(
    ([field, to]) => JSON.stringify(before[field] ?? null) !== JSON.stringify(to ?? null),
  )
  return Object.fromEntries(
    differing.map(([field, to]) => [field, { from: before[field] ?? null, to: to ?? null }]),
  )
}

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

/** What a word typed into the trail's search may stand for. */
export type TrailSearch = {
  readonly actorIds: readonly string[]
  readonly jobIds: readonly string[]
  readonly visitIds: readonly string[]
  readonly subjectIds: readonly string[]
  /** Parts of an action's name: "hold" for open-hold and decide-hold. */
  readonly actions: readonly string[]
}

/** Newest first, `take` at a time, those before `before`; null: from the newest on, everything. */
export async function trailEntries(
  reader: Reader,
  { search, before, take }: { search: TrailSearch | null; before: number | null; take: number },
): Promise<TrailEntry[]> {
  const anyOf = search === null ? [] : [
    { actorId: { in: [...search.actorIds] } },
    { jobId: { in: [...search.jobIds] } },
    { visitId: { in: [...search.visitIds] } },
    { subjectId: { in: [...search.subjectIds] } },
    ...search.actions.map((part) => ({ action: { contains: part } })),
  ]
  return reader.auditEntry.findMany({
    where: {
      ...(before === null ? {} : { seq: { lt: before } }),
      ...(search === null ? {} : { OR: anyOf }),
    },
    orderBy: { seq: 'desc' },
    take,
  })
}

/** Everything that a tag number, job number, name of a person, vendor or casting may mean. */
export async function trailSearch(reader: Reader, typed: string): Promise<TrailSearch> {
  const text = typed.trim()
  const tags = await reader.tagAssignment.findMany({
    where: { number: text.toUpperCase() },
    select: { headId: true, head: { select: { visits: { select: { id: true } } } } },
  })
  const jobs = await reader.job.findMany({ where: { number: text }, select: { id: true } })
  const named = await namedLike(reader, text)
  return {
    actorIds: named.people,
    jobIds: jobs.map(({ id }) => id),
    visitIds: tags.flatMap(({ head }) => head.visits.map(({ id }) => id)),
    subjectIds: [...named.people, ...named.others, ...tags.map(({ headId }) => headId)],
    actions: ['-', '.'].map((joint) => text.toLowerCase().replaceAll(' ', joint)),
  }
}

/** A shop has a few dozen of these: compared here, so that upper and lower case are alike on every database. */
async function namedLike(reader: Reader, text: string): Promise<{ people: string[]; others: string[] }> {
  const wanted = text.toLowerCase()
  const select = { id: true, name: true } as const
  const people = await reader.person.findMany({ select: { ...select, signIn: true } })
  const vendors = await reader.vendor.findMany({ select })
  const castings = await reader.castingRecord.findMany({ select })
  const instruments = await reader.instrument.findMany({ select })
  const like = (row: { name: string; signIn?: string }) =>
    row.name.toLowerCase().includes(wanted) || row.signIn === wanted
  const idsOf = (rows: readonly { id: string; name: string; signIn?: string }[]) =>
    rows.filter(like).map(({ id }) => id)
  return { people: idsOf(people), others: idsOf([...vendors, ...castings, ...instruments]) }
}

/** Names to show in the place of ids: tags of visits, numbers of jobs, names of subjects. */
export async function trailNames(reader: Reader, entries: readonly TrailEntry[]): Promise<Map<string, string>> {
  const visitIds = entries.flatMap(({ visitId }) => visitId ?? [])
  const jobIds = entries.flatMap(({ jobId }) => jobId ?? [])
  const subjectIds = entries.map(({ subjectId }) => subjectId)
  const select = { id: true, name: true } as const
  const named = { where: { id: { in: subjectIds } }, select }
  const visits = await reader.visit.findMany({
    where: { id: { in: [...new Set(visitIds)] } },
    select: { id: true, head: { select: { tags: { select: { number: true }, orderBy: { from: 'desc' }, take: 1 } } } },
  })
  const jobs = await reader.job.findMany({
    where: { id: { in: [...new Set(jobIds)] } },
    select: { id: true, number: true },
  })
  const rows = [
    ...visits.map(({ id, head }) => ({ id, name: head.tags[0]?.number ?? '' })),
    ...jobs.map(({ id, number }) => ({ id, name: number })),
    ...(await reader.person.findMany({ where: { id: { in: [...subjectIds, ...entries.map(({ actorId }) => actorId)] } }, select })),
    ...(await reader.vendor.findMany(named)),
    ...(await reader.castingRecord.findMany(named)),
    ...(await reader.instrument.findMany(named)),
  ]
  return new Map(rows.map(({ id, name }) => [id, name]))
}
