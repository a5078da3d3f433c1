import { allow } from '@/lib/core/access/can'
import type { Actor } from '@/lib/core/access/roles'
import { castingFigures, type CastingFigureKey } from '@/lib/core/casting/figures'
import { must } from '@/lib/core/errors'
import { trailEntries, trailNames, trailSearch } from '@/lib/data/trail'
import { db } from '@/lib/data/db'
import { shopOf } from '@/lib/data/shop'

export type TrailLine = {
  readonly seq: number
  readonly at: Date
  readonly by: string
  /** As a person says it: "decide hold". */
  readonly action: string
  readonly subject: string
  /** What it was done to, where that has a name: a tag, a job number, a vendor. */
  readonly tag: string
  readonly jobNumber: string
  readonly name: string
  readonly changes: readonly string[]
}

export type Trail = {
  readonly zone: string
  readonly locale: string
  readonly lines: readonly TrailLine[]
  /** Where the next page begins; null on the last. */
  readonly next: number | null
}

const pageSize = 50

/** The trail, newest first; `find`: a tag, a job, a name or part of an action; `before`: where a page begins. */
export async function seeTrail(
  actor: Actor,
  { find, before }: { readonly find: string; readonly before: number | null },
): Promise<Trail> {
  must(allow(actor, 'back-room.see'))
  const client = await db()
  const { timeZone: zone, locale } = await shopOf(client)
  const search = find.trim() === '' ? null : await trailSearch(client, find)
  const found = await trailEntries(client, { search, before, take: pageSize + 1 })
  const entries = found.slice(0, pageSize)
  const names = await trailNames(client, entries)
  const nameOf = (id: string | null): string => (id === null ? '' : (names.get(id) ?? ''))
  const lines = entries.map((entry) => ({
    seq: entry.seq,
    at: entry.at,
    by: nameOf(entry.actorId),
    action: entry.action.replaceAll(/[-.]/g, ' '),
    subject: entry.subject,
    tag: nameOf(entry.visitId),
    jobNumber: nameOf(entry.jobId),
    name: nameOf(entry.subjectId),
    changes: changeWords(entry.changes),
  }))
  return { zone, locale, lines, next: found.length > pageSize ? (entries.at(-1)?.seq ?? null) : null }
}

const isEmpty = (value: unknown): boolean => value === null || value === undefined || value === ''

/** "yes", "2 of 3", "condition, used; photo, none": what was kept, without its brackets. */
function words(value: unknown): string {
  if (isEmpty(value)) return 'nothing'
  if (value === true) return 'yes'
  if (value === false) return 'no'
  if (Array.isArray(value)) return listWords(value)
  if (typeof value !== 'object') return String(value)
  return listWords(
    Object.entries(value as object).flatMap(([key, inner]) => (isEmpty(inner) ? [] : [`${key} ${words(inner)}`])),
  )
}

function listWords(values: readonly unknown[]): string {
  const between = values.some((value) => typeof value === 'object' && value !== null) ? '; ' : ', '
  const kept = values.filter((value) => !isEmpty(value))
  return kept.length === 0 ? 'nothing' : kept.map(words).join(between)
}

/** "any.thicknessNewIn" → "new head thickness", "orderId" → "order", "chamberCount" → "chamber count". */
function fieldWords(field: string): string {
  const [form = '', key = ''] = field.split('.')
  const figure = castingFigures[key as CastingFigureKey]
  if (figure) return form === 'any' ? figure.label : `${figure.label}, ${form}`
  const bare = field.replace(/(?<=.)Id$/, '')
  return bare.replaceAll(/[A-Z]/g, (letter) => ` ${letter.toLowerCase()}`)
}

const isId = (value: unknown): boolean => typeof value === 'string' && /^[0-9a-f]{8}-[0-9a-f-]{27}$/.test(value)

/**
 * "name: from Ada to Ada Quill" for a change, "name: Ada" for what was new; what was new and empty is left out, and bare
 * ids, which say little to a person, come last.
 */
function changeWords(changes: string): string[] {
  const fields = Object.entries(JSON.parse(changes) as Record<string, unknown>)
  const ordered = [...fields.filter(([, value]) => !isId(value)), ...fields.filter(([, value]) => isId(value))]
  return ordered.flatMap(([field, value]) => {
    const isChange = typeof value === 'object' && value !== null && 'from' in value && 'to' in value
    if (isChange) return [`${fieldWords(field)}: from ${words(value.from)} to ${words(value.to)}`]
    return isEmpty(value) ? [] : [`${fieldWords(field)}: ${words(value)}`]
  })
}
