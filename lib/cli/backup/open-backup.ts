import { createHash } from 'node:crypto'
import { createWriteStream, existsSync, mkdirSync } from 'node:fs'
import { basename, dirname, join } from 'node:path'
import { Transform, type Readable } from 'node:stream'
import { pipeline } from 'node:stream/promises'
import { filePart, hashOfPart, leftOutSchema, manifestSchema, parts, type Manifest } from '@/lib/data/backup/manifest'
import { readTarGz } from '@/lib/data/backup/tar-gz'
import { factsOf, faultIn, filesPointedAt, withDatabaseFile } from './database-file'
import { type Hashed } from './hash-file'

export type Opened = { readonly manifest: Manifest; readonly leftOut: readonly string[] }

/** A backup that is not what it should be. The message is a whole sentence. */
export class DamagedBackup extends Error {
  constructor(path: string, why: string) {
    super(`${basename(path)} is damaged and cannot be used: ${why}.`)
  }
}

/** The manifest alone; the rest is not looked at. */
export async function readManifest(path: string): Promise<Manifest> {
  let found: Manifest | undefined
  const enough = new Error('enough')
  try {
    await readTarGz(path, async (name, size, content) => {
      if (name === parts.manifest) found = manifestSchema.parse(JSON.parse(await textOf(content, size)))
      throw enough
    })
  } catch (error) {
    if (error !== enough) throw isMissing(error) ? error : new DamagedBackup(path, reasonOf(error))
  }
  if (!found) throw new DamagedBackup(path, 'it does not begin with its list')
  return found
}

/**
 * Opens a backup and looks at all of it: every hash, every row count, the database's own checks, and that each file which a
 * row points at is there. Database, secret and (with `keepFiles`) files are put into the folder `into`, which is new.
 */
export async function openBackup(path: string, into: string, keepFiles: boolean): Promise<Opened> {
  mkdirSync(into, { recursive: true, mode: 0o700 })
  const reading = new Reading(path, into, keepFiles)
  try {
    await readTarGz(path, (name, size, content) => reading.take(name, size, content))
  } catch (error) {
    if (isMissing(error) || isOfTheDisk(error) || error instanceof DamagedBackup) throw error
    throw new DamagedBackup(path, reasonOf(error))
  }
  const opened = reading.end()
  checkDatabase(path, join(into, parts.database), opened, reading.files)
  return opened
}

class Reading {
  readonly files = new Set<string>()
  #manifest: Manifest | undefined
  #database = false
  #secret = false
  #leftOut: readonly string[] | undefined

  constructor(
    private readonly path: string,
    private readonly into: string,
    private readonly keepFiles: boolean,
  ) {}

  async take(name: string, size: number, content: Readable): Promise<void> {
    if (name === parts.manifest && !this.#manifest) {
      this.#manifest = manifestSchema.parse(JSON.parse(await textOf(content, size)))
      return
    }
    const manifest = this.#manifest
    if (!manifest) throw this.#damaged('it does not begin with its list')
    if (name === parts.database) {
      this.#same(name, await toFile(content, join(this.into, parts.database)), manifest.database)
      this.#database = true
    } else if (name === parts.secret && manifest.secret) {
      this.#same(name, await toFile(content, join(this.into, parts.secret)), manifest.secret)
      this.#secret = true
    } else if (name === parts.leftOut) {
      this.#leftOut = leftOutSchema.parse(JSON.parse(await textOf(content, size))).files
    } else await this.#takeFile(name, content)
  }

  async #takeFile(name: string, content: Readable): Promise<void> {
    const sha256 = hashOfPart(name)
    if (sha256 === null) throw this.#damaged(`${name} does not belong into a backup`)
    const to = this.keepFiles ? join(this.into, filePart(sha256)) : null
    const found = await toFile(content, to)
    if (found.sha256 !== sha256) throw this.#damaged(`a photo or paper is not what it was (${sha256.slice(0, 12)})`)
    this.files.add(sha256)
  }

  end(): Opened {
    if (!this.#manifest || !this.#database || !this.#leftOut) throw this.#damaged('its end is missing')
    if (this.#manifest.secret && !this.#secret) throw this.#damaged(`${parts.secret} is missing`)
    return { manifest: this.#manifest, leftOut: this.#leftOut }
  }

  #same(name: string, found: Hashed, wanted: Hashed): void {
    if (found.sha256 !== wanted.sha256) throw this.#damaged(`${name} is not what it was`)
  }

  #damaged = (why: string): DamagedBackup => new DamagedBackup(this.path, why)
}

function checkDatabase(
  path: string,
  database: string,
  { manifest, leftOut }: Opened,
  files: ReadonlySet<string>,
): void {
  const damaged = (why: string): DamagedBackup => new DamagedBackup(path, why)
  withDatabaseFile(database, (file) => {
    const fault = faultIn(file)
    if (fault !== '') throw damaged(`the database in it is not whole: ${fault}`)
    const { counts, newestAudit } = factsOf(file)
    if (JSON.stringify(counts) !== JSON.stringify(manifest.counts)) throw damaged('rows are missing')
    if (newestAudit?.seq !== manifest.newestAudit?.seq) throw damaged('the newest entry of the trail is another')
    const missing = filesPointedAt(file).filter((sha256) => !files.has(sha256) && !leftOut.includes(sha256))
    if (missing.length > 0) throw damaged(`${missing.length} photos or papers are missing`)
  })
}

/** Written (unless `path` is null) and hashed as it comes. */
async function toFile(content: Readable, path: string | null): Promise<Hashed> {
  const hash = createHash('sha256')
  let size = 0
  const look = new Transform({
    transform: (piece: Buffer, _, done) => {
      hash.update(piece)
      size += piece.length
      done(null, piece)
    },
  })
  if (path === null) await pipeline(content, look, async (pieces) => void (await drained(pieces)))
  else {
    if (!existsSync(dirname(path))) mkdirSync(dirname(path), { recursive: true, mode: 0o700 })
    await pipeline(content, look, createWriteStream(path, { flags: 'wx', mode: 0o600 }))
  }
  return { sha256: hash.digest('hex'), size }
}

async function drained(pieces: AsyncIterable<unknown>): Promise<void> {
  for await (const piece of pieces) void piece
}

const mostText = 64 * 1024 * 1024

async function textOf(content: Readable, size: number): Promise<string> {
  if (size > mostText) throw new Error('its list is too long')
  const pieces: Buffer[] = []
  for await (const piece of content as AsyncIterable<Buffer>) pieces.push(piece)
  return Buffer.concat(pieces).toString('utf8')
}

const codeOf = (error: unknown): string =>
  typeof error === 'object' && error !== null && 'code' in error ? String(error.code) : ''

const isMissing = (error: unknown): boolean => ['ENOENT', 'EISDIR'].includes(codeOf(error))
const isOfTheDisk = (error: unknown): boolean =>
  ['ENOSPC', 'EDQUOT', 'EFBIG', 'EROFS', 'EACCES', 'EIO'].includes(codeOf(error))

/** What the readers of gzip and tar say, as the end of a sentence. */
function reasonOf(error: unknown): string {
  if (['Z_BUF_ERROR', 'ERR_STREAM_PREMATURE_CLOSE'].includes(codeOf(error))) return 'its end is missing'
  const ofTar = error instanceof Error && error.message.startsWith('Invalid tar header')
  if (ofTar || codeOf(error).startsWith('Z_')) return 'its bytes are not what they were'
  return error instanceof Error && error.name === 'Error' ? error.message.replace(/\.$/, '') : 'its list cannot be read'
}
