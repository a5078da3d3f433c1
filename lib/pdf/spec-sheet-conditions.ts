/** How it was measured before and after; said once when both were alike. */
export function conditionLines(before: string, after: string): string[] {
  if (before === after) return before === '' ? [] : [`Before and after: ${before}`]
  return [before === '' ? '' : `Before: ${before}`, after === '' ? '' : `After: ${after}`].filter(
    (words) => words !== '',
  )
}
