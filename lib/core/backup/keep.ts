/** Why a backup was made: by the server at night, by somebody who asked for it, before the database was brought up to date. */
export const backupKinds = ['nightly', 'by-hand', 'before-update'] as const
export type BackupKind = (typeof backupKinds)[number]

export type DatedBackup = { readonly kind: BackupKind; readonly atMs: number }

const dayMs = 24 * 60 * 60 * 1000

/** How many days, weeks and months have their newest nightly backup kept. */
export const keptNightly = { days: 7, weeks: 4, months: 12 } as const
/** Of each of the two other kinds the newest so many are kept. */
export const keptOfOthers = 5

const dayOf = (atMs: number): number => Math.floor(atMs / dayMs)
/** Weeks begin on Monday: the first day of 1970 was a Thursday, three days after one. */
const weekOf = (atMs: number): number => Math.floor((dayOf(atMs) + 3) / 7)
const monthOf = (atMs: number): string => new Date(atMs).toISOString().slice(0, 7)

/** The newest of each stretch of time, of the newest so many stretches that have one. `newestFirst` is in that order. */
function newestOfEach<T extends DatedBackup>(
  newestFirst: readonly T[],
  stretch: (atMs: number) => number | string,
  most: number,
): T[] {
  const found = new Map<number | string, T>()
  for (const backup of newestFirst) if (!found.has(stretch(backup.atMs))) found.set(stretch(backup.atMs), backup)
  return [...found.values()].slice(0, most)
}

/**
 * Which backups are kept: of the nightly ones the newest of each of the last 7 days, 4 weeks (from Monday) and 12 months that
 * have one, of the others the newest 5 of their kind. What is not given back may go.
 *
 * Days are counted in UTC. Stretches without a backup are not counted, so a shop that was closed for a year keeps what it
 * had, and the newest backup of all is always kept.
 *
 * @param backups at milliseconds since 1970, in any order
 * @returns those to keep, the newest first
 *
 * Example: nightly on 1, 2, 3 March 2026 (a Sunday, then Monday and Tuesday) → all three, as three days. Derived: the rule
 * "7 days, 4 weeks, 12 months", common practice for backups.
 */
export function backupsToKeep<T extends DatedBackup>(backups: readonly T[]): T[] {
  const newestFirst = backups.toSorted((a, b) => b.atMs - a.atMs)
  const nightly = newestFirst.filter(({ kind }) => kind === 'nightly')
  const kept = new Set([
    ...newestOfEach(nightly, dayOf, keptNightly.days),
    ...newestOfEach(nightly, weekOf, keptNightly.weeks),
    ...newestOfEach(nightly, monthOf, keptNightly.months),
    ...newestFirst.filter(({ kind }) => kind === 'by-hand').slice(0, keptOfOthers),
    ...newestFirst.filter(({ kind }) => kind === 'before-update').slice(0, keptOfOthers),
  ])
  return newestFirst.filter((backup) => kept.has(backup))
}
