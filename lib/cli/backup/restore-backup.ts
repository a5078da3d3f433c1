import { existsSync, mkdirSync, readdirSync, renameSync, rmSync, rmdirSync } from 'node:fs'
import { basename, join } from 'node:path'
import { parts, type Manifest } from '@/lib/data/backup/manifest'
import { lockFile, type FileLock } from '@/lib/data/gate/file-lock'
import { migrate } from '../migrate'
import { readMigrations } from '../migration-files'
import { faultWords } from './fault-words'
import { holdMails } from './hold-mails'
import { moveRows, refuseFilled } from './move-database'
import { DamagedBackup, openBackup, readManifest } from './open-backup'
import { finishSwap, incomingFolder, isSwapUnderWay, swapIn } from './swap'

export type RestoreOrder = {
  readonly path: string
  /** The data folder it is put into; made when it is not there. */
  readonly data: string
  /** A PostgreSQL database that the rows go into, an empty one; '' for the file in the data folder. */
  readonly postgres?: string
  readonly nowMs: number
  readonly say?: (words: string) => void
}

export type Restored = {
  readonly manifest: Manifest
  /** The folder that holds what was there before; null when nothing was. */
  readonly aside: string | null
  /** Migrations that brought it up to date. */
  readonly applied: readonly string[]
  readonly leftOut: number
  /** Mails that were waiting when it was made: none of them leaves before a person says so. */
  readonly heldMails: number
}

/** Puts a backup in the place of what is in a data folder. Either what was there or the backup stands whole, whatever happens. */
export async function restoreBackup(order: RestoreOrder): Promise<Restored> {
  const { data } = order
  refuseNewer(await manifestOf(order))
  mkdirSync(data, { recursive: true, mode: 0o700 })
  const lock = lockOf(data)
  try {
    if (isSwapUnderWay(data)) await finishSwap(data) // of a restore that was killed: it had been decided
    return await unpackAndSwap(order)
  } finally {
    lock.release()
    removeLockOfNothing(data)
  }
}

const manifestOf = async ({ path }: RestoreOrder): Promise<Manifest> => {
  try {
    return await readManifest(path)
  } catch (error) {
    throw nothingDone(error)
  }
}

/** The message of a refusal before anything was touched. */
const nothingDone = (error: unknown): Error => {
  const why = error instanceof DamagedBackup ? error.message : `Nothing could be restored: ${faultWords(error)}.`
  return new Error(`${why} Nothing was changed.`, { cause: error })
}

/** A program cannot know what a later one put into the database. */
function refuseNewer({ schema }: Manifest): void {
  const newest = readMigrations('sqlite').at(-1)?.name ?? ''
  if (schema <= newest) return
  throw new Error(
    `This backup was made by a newer Brasstag (its database is at ${schema}, this program knows ${newest}). ` +
      'Install that version first, then restore. Nothing was changed.',
  )
}

/** Held by a server that runs; then nothing is restored. */
function lockOf(data: string): FileLock {
  try {
    return lockFile(join(data, parts.database))
  } catch (error) {
    const words = error instanceof Error && error.message.includes('in use') ? 'the shop is running' : faultWords(error)
    throw new Error(`Nothing was restored: ${words}. Stop Brasstag first, then restore. Nothing was changed.`, {
      cause: error,
    })
  }
}

async function unpackAndSwap(order: RestoreOrder): Promise<Restored> {
  const { path, data, nowMs, say } = order
  const incoming = join(data, incomingFolder)
  rmSync(incoming, { recursive: true, force: true })
  try {
    say?.('Opening the backup and checking all of it …')
    const { manifest, leftOut } = await openBackup(path, incoming, true)
    const { applied, heldMails } = await madeReady(incoming, nowMs)
    mkdirSync(join(incoming, 'files'), { recursive: true, mode: 0o700 })
    const fill = order.postgres ? await readyPostgres(order.postgres, data) : null
    const names = readdirSync(incoming)
    const wasThere = existsSync(join(data, parts.database))
    const aside = await swapIn(data, names, nowMs)
    if (!wasThere) removeEmpty(aside)
    await fill?.()
    return { manifest, aside: wasThere ? aside : null, applied, leftOut: leftOut.length, heldMails }
  } catch (error) {
    if (isSwapUnderWay(data)) throw halfWay(error)
    rmSync(incoming, { recursive: true, force: true })
    throw nothingDone(error)
  }
}

/** The rows wait beside what is swapped. Killed before they are in: the database is empty, and the same command does it again. */
async function readyPostgres(url: string, data: string): Promise<() => Promise<void>> {
  await refuseFilled(url)
  const waiting = join(data, '.restored.db')
  renameSync(join(data, incomingFolder, parts.database), waiting)
  return async () => {
    await moveRows(`file:${waiting}`, url)
    rmSync(waiting)
  }
}

/** In the folder that it came into: the shop's own is still untouched when a migration fails. */
async function madeReady(incoming: string, nowMs: number): Promise<Pick<Restored, 'applied' | 'heldMails'>> {
  const path = join(incoming, parts.database)
  const applied = await migrate(`file:${path}`)
  const heldMails = await holdMails(`file:${path}`, new Date(nowMs))
  for (const end of ['.lock', '.holder', '-shm', '-wal']) rmSync(`${path}${end}`, { force: true })
  return { applied, heldMails }
}

const halfWay = (error: unknown): Error =>
  new Error(
    `The backup is whole and is being put in place, but that stopped half way: ${faultWords(error)}. ` +
      'Nothing is lost. Put right what stands in the way and start Brasstag: it carries on by itself.',
    { cause: error },
  )

function removeEmpty(folder: string): void {
  try {
    rmdirSync(folder)
  } catch {
    return // something was set aside after all
  }
}

function removeLockOfNothing(data: string): void {
  const path = join(data, parts.database)
  if (!existsSync(path)) rmSync(`${path}.lock`, { force: true })
}

/** Carries on with a restore that was killed after it had been decided. Said in words; null when there was none. */
export async function carryOn(data: string): Promise<string | null> {
  if (!isSwapUnderWay(data)) return null
  const lock = lockOf(data)
  try {
    await finishSwap(data)
    return `A restore that was stopped half way has been carried to its end in ${basename(data)}.`
  } finally {
    lock.release()
  }
}
