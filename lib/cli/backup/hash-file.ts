import { createHash } from 'node:crypto'
import { createReadStream } from 'node:fs'

export type Hashed = { readonly sha256: string; readonly size: number }

export async function hashFile(path: string): Promise<Hashed> {
  const hash = createHash('sha256')
  let size = 0
  for await (const piece of createReadStream(path, { highWaterMark: 1 << 20 }) as AsyncIterable<Buffer>) {
    hash.update(piece)
    size += piece.length
  }
  return { sha256: hash.digest('hex'), size }
}

export const hashBytes = (bytes: Uint8Array): Hashed => ({
  sha256: createHash('sha256').update(bytes).digest('hex'),
  size: bytes.byteLength,
})
