/**
 * Texts that begin with this, as a range: an index answers it on both databases, where LIKE would read every row.
 * U+FFFF is not a character, so no text continues with it.
 */
export const beginsWith = (start: string): { gte: string; lt: string } => ({ gte: start, lt: `${start}\uffff` })

/** The first of each key, in their order. */
export const distinctBy = <T>(rows: readonly T[], key: (row: T) => string): T[] => {
  const first = new Map<string, T>()
  for (const row of rows) if (!first.has(key(row))) first.set(key(row), row)
  return [...first.values()]
}
