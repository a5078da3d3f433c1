/** So many heads at the most are added to the list by their tags. */
export const mostAdded = 100

/** A page of the list of labels, with these tags added to it. */
export function labelsHref(tags: readonly string[], page = 1): string {
  const query = new URLSearchParams([
    ...tags.map((tag) => ['tag', tag]),
    ...(page === 1 ? [] : [['page', String(page)]]),
  ])
  return query.size === 0 ? '/counter/labels' : `/counter/labels?${query}`
}
