/** Example: `wordsForWait(40)` → "Wait 40 seconds, then try again."; of 900: "Wait 15 minutes, then try again." */
export function wordsForWait(seconds: number): string {
  const minutes = Math.ceil(seconds / 60)
  if (seconds <= 1) return 'Wait a second, then try again.'
  if (seconds <= 90) return `Wait ${seconds} seconds, then try again.`
  return `Wait ${minutes} minutes, then try again.`
}

/** Example: `wordsForLeft(40)` → "40 s left"; of 900: "15 min left". */
export const wordsForLeft = (seconds: number): string =>
  seconds <= 90 ? `${seconds} s left` : `${Math.ceil(seconds / 60)} min left`
