/** What a page of a list that has several is given. */
export type ListProps = { searchParams: Promise<{ page?: string | string[] }> }

/** The page asked for by `?page=`; the first where it is none. */
export function pageOf(given: string | string[] | undefined): number {
  const page = Number(Array.isArray(given) ? given[0] : given)
  return Number.isInteger(page) && page >= 1 && page <= 100_000 ? page : 1
}
