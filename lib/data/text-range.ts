/**
 * Texts that begin with this, as a range: an index answers it on both databases, where LIKE would read every row.
 * U+FFFF is not a character, so no text continues with it.
 */
export const beginsWith = (start: string): { gte: string; lt: string } => ({ gte: start, lt: `${start}\uffff` })

const suffixLength = 32

/** Every ending of these texts in lower case, cut to 32 characters: "ada" → "ada", "da", "a". Each once. */
export function suffixesOf(texts: readonly string[]): string[] {
  const endings = texts.flatMap((text) => {
    const letters = [...text.toLowerCase()]
    return letters.map((_, at) => letters.slice(at, at + suffixLength).join(''))
  })
  return [...new Set(endings)]
}

/** Suffixes of texts that have this anywhere, as a range. */
export const anywhereRange = (text: string): { gte: string; lt: string } =>
  beginsWith([...text.toLowerCase()].slice(0, suffixLength).join(''))

/** The first of each key, in their order. */
export const distinctBy = <T>(rows: readonly T[], key: (row: T) => string): T[] => {
  const first = new Map<string, T>()
  for (const row of rows) if (!first.has(key(row))) first.set(key(row), row)
  return [...first.values()]
}
