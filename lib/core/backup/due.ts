const hourMs = 60 * 60 * 1000

/** Older than this, the last backup is shown in red. */
export const oldAfterHours = 48

/** The hours of the shop's night in which the server makes its backup: from two o'clock to before five. */
const night = { from: 2, to: 5 } as const
/** Not twice in one night, even when the clocks are set back. */
const leastApartHours = 12
/** A machine that is switched off at night makes it when it is next on. */
const mostApartHours = 26

/** Whole hours since a moment; a clock that was set back gives 0. */
export const hoursSince = (atMs: number, nowMs: number): number => Math.max(0, Math.floor((nowMs - atMs) / hourMs))

/**
 * Whether the nightly backup is to be made now: at night when the last one is 12 hours old, at any hour when it is 26 hours
 * old or there is none. A last backup in the future (the clock was wrong) counts as none.
 *
 * @param lastMs of the last nightly backup, milliseconds since 1970; null: there is none
 * @param hourOfDay 0 to 23, by the shop's clock
 *
 * Example: made yesterday at 2:10, now 2:05 → due (23.9 h, at night); now 14:00 on the same day → not due. Derived: once a
 * night, and soon after a night that was missed.
 */
export function isNightlyDue(lastMs: number | null, nowMs: number, hourOfDay: number): boolean {
  if (lastMs === null || lastMs > nowMs + hourMs) return true
  const apartHours = (nowMs - lastMs) / hourMs
  const atNight = hourOfDay >= night.from && hourOfDay < night.to
  return apartHours >= mostApartHours || (atNight && apartHours >= leastApartHours)
}

/**
 * How much a backup can be relied on: 'none' there is none, 'old' older than 48 hours, 'good' otherwise.
 *
 * Example: 47 hours → 'good'; 48 hours and a minute → 'old'. Derived: two nights missed.
 */
export function backupState(newestMs: number | null, nowMs: number): 'none' | 'old' | 'good' {
  if (newestMs === null) return 'none'
  return nowMs - newestMs > oldAfterHours * hourMs ? 'old' : 'good'
}
