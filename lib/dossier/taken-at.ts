/** When a reading was taken: as its device says, and never after it came in. */
export function takenAtOf(said: string | null, now: Date): Date {
  const at = said === null ? now : new Date(said)
  return at > now ? now : at
}
