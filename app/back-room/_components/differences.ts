export type Difference = { readonly path: string; readonly yours: string; readonly theirs: string }

/** Every leaf of a form's values under its path: "figures.any.milledWidthIn" → "7.0". */
function leaves(value: unknown, path = ''): [string, string][] {
  if (Array.isArray(value) && value.every((entry) => typeof entry === 'string'))
    return [[path, value.join(', ')]]
  if (typeof value === 'object' && value !== null) {
    return Object.entries(value).flatMap(([key, inner]) =>
      leaves(inner, path === '' ? key : `${path}.${key}`),
    )
  }
  return [[path, value === null || value === undefined ? '' : String(value)]]
}

/** What two states of one form disagree on, leaving out the version they carry. */
export function differences(yours: unknown, theirs: unknown): Difference[] {
  const mine = new Map(leaves(yours))
  const other = new Map(leaves(theirs))
  const paths = [...new Set([...mine.keys(), ...other.keys()])].filter((path) => path !== 'version')
  return paths
    .map((path) => ({ path, yours: mine.get(path) ?? '', theirs: other.get(path) ?? '' }))
    .filter((difference) => difference.yours !== difference.theirs)
}
