import { allow } from '@/lib/core/access/can'
import type { Actor } from '@/lib/core/access/roles'
import { backupState, hoursSince } from '@/lib/core/backup/due'
import { sizeWords } from '@/lib/core/backup/size-words'
import { must } from '@/lib/core/errors'
import { knownBackups } from '@/lib/data/backup/known'
import { db } from '@/lib/data/db'
import { shopOf } from '@/lib/data/shop'

/** The demo makes none by itself: everybody in it is invented. */
export type BackupAge = 'none' | 'old' | 'good' | 'demo'

export type BackupLine = {
  readonly age: BackupAge
  /** Whole hours since the newest; null: there is none. */
  readonly hours: number | null
  /** That it was opened again and found whole. */
  readonly isChecked: boolean
  /** Why the last one was not made, '' when it was: a whole sentence. */
  readonly fault: string
  /** Why there is no copy in the second folder; '' when there is one, or none is set. */
  readonly secondFault: string
}

function lineOf(mode: string, now: Date): BackupLine {
  const { list, state } = knownBackups()
  const newest = list[0] ?? null
  const age = backupState(newest?.atMs ?? null, now.getTime())
  return {
    age: mode === 'demo' && age !== 'good' ? 'demo' : age,
    hours: newest ? hoursSince(newest.atMs, now.getTime()) : null,
    isChecked: newest !== null && state.checkedMs[newest.name] !== undefined,
    fault: state.lastTry?.fault ?? '',
    secondFault: state.lastTry?.secondFault ?? '',
  }
}

/** How old the newest backup is, and whether it can be relied on: the one line on the Back room's first page. */
export async function seeBackupLine(actor: Actor, now: Date): Promise<BackupLine> {
  must(allow(actor, 'backup.make'))
  const { mode } = await shopOf(await db())
  return lineOf(mode, now)
}

/** The backups there are, the newest first; at most twenty-three nights and ten others are kept. */
export async function seeBackups(actor: Actor, now: Date) {
  must(allow(actor, 'backup.make'))
  const { mode, timeZone, locale } = await shopOf(await db())
  const { folder, list, state, doing, second } = knownBackups()
  return {
    ...{ zone: timeZone, locale, folder, doing, second },
    line: lineOf(mode, now),
    leftOut: state.lastTry?.leftOut ?? 0,
    backups: list.map(({ name, kind, atMs, size }) => ({
      ...{ name, kind, at: new Date(atMs), size: sizeWords(size) },
      checkedAt: state.checkedMs[name] === undefined ? null : new Date(state.checkedMs[name]),
    })),
  }
}

/** For whoever watches over the server, signed in as the owner. */
export function backupHealth(actor: Actor, now: Date) {
  must(allow(actor, 'backup.make'))
  const { list, state, second } = knownBackups()
  const newest = list[0]
  return {
    state: backupState(newest?.atMs ?? null, now.getTime()),
    newestAt: newest ? new Date(newest.atMs).toISOString() : null,
    isChecked: newest !== undefined && state.checkedMs[newest.name] !== undefined,
    fault: state.lastTry?.fault ?? '',
    secondFolder: second === null ? 'none' : second.isThere ? 'there' : 'missing',
  }
}
