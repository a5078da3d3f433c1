/** So many heads at the most are added to the list by their tags. */
export const mostAdded = 100

/** The page with these tags added to its list. */
export function labelsHref(tags: readonly string[]): string {
  const query = new URLSearchParams(tags.map((tag) => ['tag', tag]))
  return tags.length === 0 ? '/counter/labels' : `/counter/labels?${query}`
}
