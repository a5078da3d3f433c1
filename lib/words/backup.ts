import type { BackupKind } from '../core/backup/keep'
import { counted } from '../core/counted'

export const backupKindWords: Readonly<Record<BackupKind, string>> = {
  nightly: 'At night',
  'by-hand': 'By hand',
  'before-update': 'Before an update',
}

/** Example: 0 → "less than an hour old"; 5 → "5 hours old"; 72 → "3 days old". */
export function ageWords(hours: number): string {
  if (hours < 1) return 'less than an hour old'
  return hours < 48 ? `${counted(hours, 'hour', 'hours')} old` : `${Math.floor(hours / 24)} days old`
}

type Line = {
  readonly age: 'none' | 'old' | 'good' | 'demo'
  readonly hours: number | null
  readonly isChecked: boolean
}

/** What the newest backup is worth, in a sentence or two. */
export function backupWords({ age, hours, isChecked }: Line): string {
  const newest = hours === null ? 'There is no backup.' : `The newest backup is ${ageWords(hours)}.`
  if (age === 'demo') return `${newest} The demo makes none by itself.`
  if (age === 'none') return `${newest} Make one now; the server makes one every night while it runs.`
  if (age === 'old') return `${newest} No backup was made last night: make one now.`
  return isChecked ? `${newest} It was opened again and found whole.` : `${newest} It was not opened again to check it.`
}
