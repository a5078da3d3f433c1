export type SearchParams = Readonly<Record<string, string | string[] | undefined>>

/** A page's query with one value a name: the first, where a name is given twice. */
export function queryOf(given: SearchParams): URLSearchParams {
  const pairs = Object.entries(given).map(([name, value]) => [name, Array.isArray(value) ? value[0] : value] as const)
  return new URLSearchParams(pairs.flatMap(([name, value]) => (value === undefined ? [] : [[name, value]])))
}
