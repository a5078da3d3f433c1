import { createReadStream, createWriteStream } from 'node:fs'
import { open, rename, rm, stat } from 'node:fs/promises'
import { dirname } from 'node:path'
import type { Readable, Writable } from 'node:stream'
import { pipeline } from 'node:stream/promises'
import { createGunzip, createGzip } from 'node:zlib'
import { extract, pack, type Pack } from 'tar-stream'

/** Puts one file into an archive. */
export type Adding = {
  readonly bytes: (name: string, content: Uint8Array) => Promise<void>
  readonly file: (name: string, path: string) => Promise<void>
  /** Of a length that is known before; `content` gives it piece by piece. */
  readonly pieces: (name: string, size: number, content: AsyncIterable<Uint8Array>) => Promise<void>
}

/** The header's field for the size ends here. */
const largestPlain = 8 ** 11 - 1

const headerOf = (name: string, size: number) => ({
  ...{ name, size, mode: 0o600, type: 'file' },
  ...(size > largestPlain ? { pax: { size: String(size) } } : {}),
})

/** What is still waited for when the archive breaks off (a full disk, a reader who went away) fails with it. */
function addingTo(archive: Pack): Adding {
  const broken = new Promise<never>((_, reject) => {
    archive.once('close', () => reject(new Error('The archive was broken off.')))
  })
  broken.catch(() => undefined)
  const entry = (name: string, size: number, content: AsyncIterable<Uint8Array>) =>
    Promise.race([broken, entryOf(archive, name, size, content)])
  return {
    bytes: (name, content) => Promise.race([broken, bytesOf(archive, name, content)]),
    file: async (name, path) => {
      const { size } = await stat(path)
      await entry(name, size, size === 0 ? noPieces() : createReadStream(path, { end: size - 1 }))
    },
    pieces: entry,
  }
}

async function* noPieces(): AsyncGenerator<Uint8Array> {
  yield* []
}

const bytesOf = (archive: Pack, name: string, content: Uint8Array): Promise<void> =>
  new Promise((resolve, reject) => {
    const buffer = Buffer.from(content.buffer, content.byteOffset, content.byteLength)
    archive.entry(headerOf(name, buffer.length), buffer, (error) => (error ? reject(error) : resolve()))
  })

const entryOf = (archive: Pack, name: string, size: number, content: AsyncIterable<Uint8Array>): Promise<void> =>
  new Promise<void>((resolve, reject) => {
    const entry = archive.entry(headerOf(name, size), (error) => (error ? reject(error) : resolve()))
    pipeline(content, entry).catch(reject)
  })

/** A tar archive in gzip as a stream, for as long as `fill` adds to it. Only as fast as it is read. */
export async function tarGzInto(target: Writable, fill: (add: Adding) => Promise<void>): Promise<void> {
  const archive = pack()
  // Whichever fails first is the reason; the other only follows from it, and is waited for.
  const reasons: unknown[] = []
  const note = (error: unknown) => void reasons.push(error)
  const written = pipeline(archive, createGzip({ level: 3 }), target).catch(note)
  const filled = fill(addingTo(archive)).then(
    () => archive.finalize(),
    (error: unknown) => {
      note(error)
      archive.destroy(error as Error)
    },
  )
  await Promise.all([written, filled])
  if (reasons.length > 0) throw reasons[0]
}

/** The archive as a file: under another name until it is whole and on the disk. */
export async function writeTarGz(path: string, fill: (add: Adding) => Promise<void>): Promise<void> {
  const part = `${path}.part`
  try {
    await tarGzInto(createWriteStream(part, { flags: 'wx', mode: 0o600 }), fill)
    await syncPath(part)
    await rename(part, path)
    await syncPath(dirname(path))
  } catch (error) {
    await rm(part, { force: true })
    throw error
  }
}

/** Until it is on the disk. Of a folder: the names in it. */
export async function syncPath(path: string): Promise<void> {
  const opened = await open(path, 'r')
  try {
    await opened.sync()
  } finally {
    await opened.close()
  }
}

/** Each file of an archive in turn; what `take` throws ends it. */
export async function readTarGz(
  path: string,
  take: (name: string, size: number, content: Readable) => Promise<void>,
): Promise<void> {
  const entries = extract()
  entries.on('entry', ({ name, size = 0, type }, content, next) => {
    const taken = type === 'file' ? take(name, size, content) : Promise.reject(new Error(`${name} is no file`))
    taken.then(
      () => {
        content.resume() // what was not read is passed over
        next()
      },
      (error: Error) => entries.destroy(error),
    )
  })
  await pipeline(createReadStream(path), createGunzip(), entries)
}
