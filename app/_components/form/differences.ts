export type Difference = { readonly path: string; readonly now: string }

type Fields = Readonly<Record<string, unknown>>

const isFields = (value: unknown): value is Fields =>
  typeof value === 'object' && value !== null && !Array.isArray(value)

const same = (one: unknown, other: unknown): boolean => JSON.stringify(one ?? '') === JSON.stringify(other ?? '')

/** A list of bolts and the like is one thing: half of one and half of another makes no sense. */
function words(value: unknown): string {
  if (Array.isArray(value)) return value.map(words).join('; ')
  if (isFields(value)) return Object.values(value).map(words).filter(Boolean).join(', ')
  return String(value ?? '')
}

/** What a form says now, field by field under its path, where it is other than it was; the version aside. */
export function differences(was: unknown, now: unknown, path = ''): Difference[] {
  if (isFields(was) && isFields(now)) {
    const keys = [...new Set([...Object.keys(was), ...Object.keys(now)])].filter((key) => key !== 'version')
    return keys.flatMap((key) => differences(was[key], now[key], path === '' ? key : `${path}.${key}`))
  }
  return same(was, now) ? [] : [{ path, now: words(now) }]
}

/** Yours where you changed something, theirs everywhere else. */
export function merged<T>(was: unknown, yours: T, theirs: T): T {
  if (isFields(yours) && isFields(theirs)) {
    const before = isFields(was) ? was : {}
    const keys = [...new Set([...Object.keys(yours), ...Object.keys(theirs)])]
    const fields = keys.map((key) => [key, merged(before[key], yours[key], theirs[key])] as const)
    return Object.fromEntries(fields) as T
  }
  return same(was, yours) ? theirs : yours
}
