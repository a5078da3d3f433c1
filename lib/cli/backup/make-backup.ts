import {
  chmodSync,
  copyFileSync,
  existsSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  renameSync,
  rmSync,
  statSync,
} from 'node:fs'
import { basename, join, resolve } from 'node:path'
import { backupsToKeep, type BackupKind } from '@/lib/core/backup/keep'
import { filePart, parts, type Manifest } from '@/lib/data/backup/manifest'
import { backupName } from '@/lib/data/backup/names'
import { backupFolder, backupsIn, changeBackupState, readBackupState } from '@/lib/data/backup/state'
import { syncPath, writeTarGz, type Adding } from '@/lib/data/backup/tar-gz'
import { lockFile, type FileLock } from '@/lib/data/gate/file-lock'
import { factsOf, filesPointedAt, withDatabaseFile } from './database-file'
import { faultWords } from './fault-words'
import { hashBytes, hashFile } from './hash-file'
import { openBackup } from './open-backup'
import { snapshotInto } from './snapshot'

export type BackupOrder = {
  readonly url: string
  /** The shop's data folder. */
  readonly data: string
  readonly kind: BackupKind
  readonly nowMs: number
  /** Where to, instead of the data folder's own `backups`; nothing is removed from there. */
  readonly to?: string
  /** A stick or a share that has a copy of each backup; '' for none. */
  readonly second?: string
  readonly say?: (words: string) => void
}

export type Made = {
  readonly path: string
  readonly size: number
  readonly rows: number
  readonly files: number
  readonly leftOut: readonly string[]
  /** Why there is no copy in the second folder; '' when there is one, or none is wanted. */
  readonly secondFault: string
}

/** Makes a backup, opens it again and looks at all of it, copies it to the second folder, and removes what need not be kept. */
export async function makeBackup(order: BackupOrder): Promise<Made> {
  const own = backupFolder(order.data)
  makeOwn(own)
  const lock = onlyOne(own)
  try {
    changeBackupState(own, { running: { pid: process.pid, sinceMs: order.nowMs, doing: 'copying the database' } })
    const made = await makeAndCopy(order, own)
    note(own, order, { secondFault: made.secondFault, leftOut: made.leftOut.length })
    return made
  } catch (error) {
    const fault = `No backup was made: ${faultWords(error)}.`
    tryNoting(own, order, fault)
    throw new Error(fault, { cause: error })
  } finally {
    lock.release()
  }
}

function makeOwn(own: string): void {
  try {
    mkdirSync(own, { recursive: true, mode: 0o700 })
  } catch (error) {
    throw new Error(`No backup was made: ${faultWords(error)}.`, { cause: error })
  }
}

function onlyOne(own: string): FileLock {
  try {
    return lockFile(join(own, 'making'))
  } catch (error) {
    const isHeld = error instanceof Error && error.message.includes('in use')
    const why = isHeld ? 'another one is being made just now' : faultWords(error)
    throw new Error(`No backup was made: ${why}.`, { cause: error })
  }
}

function note(
  own: string,
  { kind, nowMs }: BackupOrder,
  found: Partial<{ fault: string; secondFault: string; leftOut: number }>,
) {
  const lastTry = { kind, atMs: nowMs, fault: '', secondFault: '', leftOut: 0, ...found }
  changeBackupState(own, { lastTry, running: null })
}

/** Where the disk is full the note cannot be kept either; the reason for that is the one that is told. */
function tryNoting(own: string, order: BackupOrder, fault: string): void {
  try {
    note(own, order, { fault })
  } catch {
    return
  }
}

async function makeAndCopy(order: BackupOrder, own: string): Promise<Made> {
  const to = order.to === undefined ? own : resolve(order.to)
  mkdirSync(to, { recursive: true, mode: 0o700 })
  removeUnfinished(to)
  const work = join(to, '.unfinished')
  mkdirSync(work, { mode: 0o700 })
  try {
    const path = join(to, backupName(order.nowMs, order.kind))
    const manifest = await write(order, work, path)
    const leftOut = await check(order, path, join(work, 'opened'), own)
    if (to === own) removeOld(own)
    return {
      ...{ path, size: statSync(path).size, leftOut, files: manifest.files - leftOut.length },
      rows: Object.values(manifest.counts).reduce((sum, count) => sum + count, 0),
      secondFault: await copyToSecond(order.second ?? '', path),
    }
  } finally {
    rmSync(work, { recursive: true, force: true })
  }
}

/** Left by a process that was killed: nobody else makes one now, by the lock. */
function removeUnfinished(folder: string): void {
  rmSync(join(folder, '.unfinished'), { recursive: true, force: true })
  for (const name of readdirSync(folder)) {
    if (/^brasstag-.*\.tar\.gz\.part$/.test(name)) rmSync(join(folder, name), { force: true })
  }
}

async function write(order: BackupOrder, work: string, path: string): Promise<Manifest> {
  const database = join(work, parts.database)
  await snapshotInto(order.url, database)
  chmodSync(database, 0o600)
  const { facts, files } = withDatabaseFile(database, (file) => ({ facts: factsOf(file), files: filesPointedAt(file) }))
  const secret = secretIn(order.data)
  const manifest: Manifest = {
    ...{ format: 1, madeAt: new Date(order.nowMs).toISOString(), kind: order.kind, ...facts, files: files.length },
    database: await hashFile(database),
    secret: secret ? hashBytes(secret) : null,
  }
  doing(order, 'packing')
  await writeTarGz(path, async (add) => {
    await add.bytes(parts.manifest, Buffer.from(JSON.stringify(manifest)))
    await add.file(parts.database, database)
    if (secret) await add.bytes(parts.secret, secret)
    await addFiles(add, order.data, files)
  })
  return manifest
}

function secretIn(data: string): Buffer | null {
  const path = join(data, parts.secret)
  return existsSync(path) ? readFileSync(path) : null
}

/** One that is missing or damaged in the shop is left out and said; the backup is made all the same. */
async function addFiles(add: Adding, data: string, files: readonly string[]): Promise<void> {
  const leftOut: string[] = []
  for (const sha256 of files) {
    const bytes = wholeFile(join(data, filePart(sha256)), sha256)
    if (bytes) await add.bytes(filePart(sha256), bytes)
    else leftOut.push(sha256)
  }
  await add.bytes(parts.leftOut, Buffer.from(JSON.stringify({ files: leftOut })))
}

function wholeFile(path: string, sha256: string): Buffer | null {
  try {
    const bytes = readFileSync(path)
    return hashBytes(bytes).sha256 === sha256 ? bytes : null
  } catch {
    return null
  }
}

async function check(order: BackupOrder, path: string, into: string, own: string): Promise<readonly string[]> {
  doing(order, 'opening it again')
  try {
    const { leftOut } = await openBackup(path, into, false)
    const there = new Set(backupsIn(own).map(({ name }) => name))
    const known = Object.entries(readBackupState(own).checkedMs).filter(([name]) => there.has(name))
    const name = backupName(order.nowMs, order.kind)
    changeBackupState(own, { checkedMs: { ...Object.fromEntries(known), [name]: Date.now() } })
    return leftOut
  } catch (error) {
    rmSync(path, { force: true }) // a backup that cannot be put back is none
    throw error
  }
}

function doing(order: BackupOrder, words: string): void {
  order.say?.(words)
  const own = backupFolder(order.data)
  const { running } = readBackupState(own)
  if (running) changeBackupState(own, { running: { ...running, doing: words } })
}

function removeOld(folder: string): void {
  const all = backupsIn(folder)
  const keep = new Set(backupsToKeep(all).map(({ name }) => name))
  for (const { name, path } of all) if (!keep.has(name)) rmSync(path)
}

/** A folder that is not there is not made: a stick that is not plugged in would be written to the disk beneath it. */
async function copyToSecond(second: string, path: string): Promise<string> {
  if (second === '') return ''
  const to = join(second, basename(path))
  try {
    if (!existsSync(second)) return `There is no copy in ${second}: the folder is not there.`
    removeUnfinished(second)
    copyFileSync(path, `${to}.part`)
    chmodSync(`${to}.part`, 0o600)
    await syncPath(`${to}.part`)
    if ((await hashFile(`${to}.part`)).sha256 !== (await hashFile(path)).sha256)
      throw new Error('it was not the same there')
    renameSync(`${to}.part`, to)
    await syncPath(second)
    removeOld(second)
    return ''
  } catch (error) {
    rmSync(`${to}.part`, { force: true })
    return `There is no copy in ${second}: ${faultWords(error)}.`
  }
}
