export type Difference = { readonly path: string; readonly now: string }

type Fields = Readonly<Record<string, unknown>>

const isFields = (value: unknown): value is Fields =>
  typeof value === 'object' && value !== null && !Array.isArray(value)

/** Records of their own, in a list that is always as long: the heads of a job. Another list is one thing. */
const isRecords = (value: unknown): value is readonly Fields[] =>
  Array.isArray(value) && value.length > 0 && value.every((one) => isFields(one) && 'version' in one)

const asFields = (value: unknown): Fields | null =>
  isFields(value) ? value : isRecords(value) ? Object.fromEntries(Object.entries(value)) : null

const same = (one: unknown, other: unknown): boolean => JSON.stringify(one ?? '') === JSON.stringify(other ?? '')

/** Half of one list of bolts and half of another makes no sense. */
function words(value: unknown): string {
  if (Array.isArray(value)) return value.map(words).join('; ')
  if (isFields(value)) return Object.values(value).map(words).filter(Boolean).join(', ')
  return String(value ?? '')
}

/** What a form says now, field by field under its path, where it is other than it was; versions aside. */
export function differences(was: unknown, now: unknown, path = ''): Difference[] {
  const [before, after] = [asFields(was), asFields(now)]
  if (!before || !after) return same(was, now) ? [] : [{ path, now: words(now) }]
  const keys = [...new Set([...Object.keys(before), ...Object.keys(after)])].filter((key) => key !== 'version')
  return keys.flatMap((key) => differences(before[key], after[key], path === '' ? key : `${path}.${key}`))
}

/** Yours where you changed something, theirs everywhere else. */
export function merged<T>(was: unknown, yours: T, theirs: T): T {
  const [mine, other] = [asFields(yours), asFields(theirs)]
  if (!mine || !other) return same(was, yours) ? theirs : yours
  const before = asFields(was) ?? {}
  const keys = [...new Set([...Object.keys(mine), ...Object.keys(other)])]
  const fields = keys.map((key) => [key, merged(before[key], mine[key], other[key])] as const)
  return (Array.isArray(theirs) ? fields.map(([, value]) => value) : Object.fromEntries(fields)) as T
}

/** The versions of the records that a form holds, its own and those of its lists. */
export function versionsIn(values: unknown): readonly number[] {
  const fields = asFields(values)
  if (!fields) return []
  return Object.entries(fields).flatMap(([key, value]) => (key === 'version' ? [Number(value)] : versionsIn(value)))
}
