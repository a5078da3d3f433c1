import { allow } from '@/lib/core/access/can'
import type { Actor } from '@/lib/core/access/roles'
import { isNightlyDue } from '@/lib/core/backup/due'
import { must, RefusedError } from '@/lib/core/errors'
import { knownBackups } from '@/lib/data/backup/known'
import { startBackupProcess } from '@/lib/data/backup/start-process'
import { db } from '@/lib/data/db'
import { isFirstThisHour } from '@/lib/data/first-this-hour'
import { shopOf } from '@/lib/data/shop'
import { write, type Moment } from '@/lib/data/write'

/** Begins a backup; it goes on by itself, and the page says how far it is. */
export async function startBackup(actor: Actor, _: object, moment: Moment): Promise<{ started: true }> {
  must(allow(actor, 'backup.make'))
  if (knownBackups().doing !== null) {
    throw new RefusedError({ code: 'wrong-state', message: 'A backup is being made just now. Wait until it is done.' })
  }
  await write(actor, moment, async ({ audit }) => audit({ action: 'backup.make', subjectId: 'all' }))
  startBackupProcess('by-hand', moment.now.getTime())
  return { started: true }
}

const tryAgainAfterMs = 60 * 60 * 1000

const hourIn = (zone: string, at: Date): number =>
  Number(new Intl.DateTimeFormat('en-GB', { timeZone: zone, hour: '2-digit', hourCycle: 'h23' }).format(at))

/** The server's own: begins the nightly backup of a real shop when it is due. True when it did. */
export async function backUpAtNight(now: Date, start = startBackupProcess): Promise<boolean> {
  const client = await db()
  const { mode, timeZone } = await shopOf(client)
  const { list, state, doing } = knownBackups()
  if (mode === 'demo' || doing !== null) return false
  const { lastTry } = state
  const failedLately = lastTry !== null && lastTry.fault !== '' && now.getTime() - lastTry.atMs < tryAgainAfterMs
  const lastMs = list.find(({ kind }) => kind === 'nightly')?.atMs ?? null
  if (failedLately || !isNightlyDue(lastMs, now.getTime(), hourIn(timeZone, now))) return false
  // Several processes look at the same moment.
  if (!(await isFirstThisHour(client, 'nightly backup', now))) return false
  start('nightly', now.getTime())
  return true
}
