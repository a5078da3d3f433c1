import 'server-only'
import type { Reader } from './db'
import { namesOf } from './people'
import { auditChanges } from './stored/records'

export type LastChange = { readonly by: string; readonly at: Date }

/** Who changed a record last, for the page that shows it and for a conflict over it. */
export async function lastChange(reader: Reader, subject: string, subjectId: string): Promise<LastChange | null> {
  const entry = await reader.auditEntry.findFirst({
    where: { subject, subjectId },
    orderBy: { seq: 'desc' },
    select: { at: true, actorId: true },
  })
  if (!entry) return null
  const person = await reader.person.findUnique({ where: { id: entry.actorId }, select: { name: true } })
  return { by: person?.name ?? '', at: entry.at }
}

export type ChangeSeen = LastChange & {
  readonly seq: number
  readonly changes: Readonly<Record<string, unknown>>
}

/** So many of the newest changes of a record are shown at once; all of them are in the trail. */
const newest = 20

/** What was changed in a record, by whom and when, the newest first. */
export async function changesOf(reader: Reader, subject: string, subjectId: string): Promise<ChangeSeen[]> {
  const entries = await reader.auditEntry.findMany({
    where: { subject, subjectId },
    orderBy: { seq: 'desc' },
    take: newest,
    select: { seq: true, at: true, actorId: true, changes: true },
  })
  const names = await namesOf(entries.map(({ actorId }) => actorId))
  return entries.map(({ seq, at, actorId, changes }) => ({
    ...{ seq, at, by: names.get(actorId) ?? '' },
    changes: auditChanges.read(changes, seq),
  }))
}

/** Field → what it was and what it is now, for those that differ. */
export function changesBetween(
  before: Readonly<Record<string, unknown>>,
  after: Readonly<Record<string, unknown>>,
): Record<string, { from: unknown; to: unknown }> {
  const differing = Object.entries(after).filter(
    ([field, to]) => JSON.stringify(before[field] ?? null) !== JSON.stringify(to ?? null),
  )
  return Object.fromEntries(differing.map(([field, to]) => [field, { from: before[field] ?? null, to: to ?? null }]))
}
