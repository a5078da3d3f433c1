import 'server-only'
import { createHash, randomUUID } from 'node:crypto'
import { mkdir, open, readFile as readBytes, rename, rm, stat } from 'node:fs/promises'
import { dirname, join } from 'node:path'
import { RefusedError } from '@/lib/core/errors'
import { dataFolder } from '@/lib/env'
import type { Tx } from './db'

/** A file under the data folder; its name is what it holds. */
export type StoredFile = { readonly sha256: string; readonly size: number }

const hashOf = (bytes: Uint8Array): string => createHash('sha256').update(bytes).digest('hex')

function pathOf(sha256: string): string {
  if (!/^[0-9a-f]{64}$/.test(sha256)) throw gone()
  return join(/* turbopackIgnore: true */ dataFolder(), 'files', sha256.slice(0, 2), sha256)
}

const gone = (): RefusedError =>
  new RefusedError({
    code: 'failed',
    message: 'The file of this paper is missing or damaged. Tell the owner: it is in the backup.',
  })

/**
 * Puts the bytes on the disk for good: written under another name, synced, then renamed, so that a file under its hash is
 * always whole. Its row is the caller's, in the transaction that points at it; a file without a row does no harm.
 */
export async function storeFile(bytes: Uint8Array): Promise<StoredFile> {
  const stored = { sha256: hashOf(bytes), size: bytes.byteLength }
  const path = pathOf(stored.sha256)
  if ((await sizeOf(path)) === stored.size) return stored
  await mkdir(dirname(path), { recursive: true, mode: 0o700 })
  const part = `${path}.${randomUUID()}.part`
  try {
    await writeSynced(part, bytes)
    await rename(part, path)
  } finally {
    await rm(part, { force: true })
  }
  await syncFolder(dirname(path))
  return stored
}

async function writeSynced(path: string, bytes: Uint8Array): Promise<void> {
  const file = await open(path, 'wx', 0o600)
  try {
    await file.writeFile(bytes)
    await file.sync()
  } finally {
    await file.close()
  }
}

/** Without this the rename itself may be lost when the power goes. */
async function syncFolder(path: string): Promise<void> {
  const folder = await open(path, 'r')
  try {
    await folder.sync()
  } finally {
    await folder.close()
  }
}

const sizeOf = (path: string): Promise<number | null> =>
  stat(path).then(
    ({ size }) => size,
    () => null,
  )

/** The row of a stored file; the same content is one row. */
export async function addFileRow(tx: Tx, file: StoredFile, type: string, now: Date): Promise<void> {
  await tx.file.upsert({ where: { sha256: file.sha256 }, create: { ...file, type, createdAt: now }, update: {} })
}

/** The bytes, and only if they are still those that were stored. */
export async function readFile(sha256: string): Promise<Uint8Array<ArrayBuffer>> {
  const bytes = await readBytes(pathOf(sha256)).catch(() => null)
  if (!bytes || hashOf(bytes) !== sha256) throw gone()
  return new Uint8Array(bytes)
}
