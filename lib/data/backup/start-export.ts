import 'server-only'
import { Readable } from 'node:stream'
import { RefusedError } from '@/lib/core/errors'
import { log } from '../log'
import { startOwnCommand } from './own-command'

/** How far it is: tables and files done, of how many; nothing is known in the first moments. */
export type ExportProgress = { readonly done: number; readonly of: number }

// On globalThis, because the server may load this module more than once.
const home = globalThis as typeof globalThis & { brasstagExport?: ExportProgress }

/** Null: nothing is being taken along. */
export const exportProgress = (): ExportProgress | null => home.brasstagExport ?? null

/**
 * Everything of the shop as one archive, which is made as it is read; whoever stops reading stops it. An archive that does not
 * come to its end breaks off, so that nobody takes a part of it for the whole.
 */
export function startExport(): ReadableStream<Uint8Array> {
  if (home.brasstagExport) {
    throw new RefusedError({
      code: 'wrong-state',
      message: 'Everything is being taken along just now. Wait for its end.',
    })
  }
  home.brasstagExport = { done: 0, of: 0 }
  const child = startOwnCommand('export', ['-'], ['ignore', 'pipe', 'pipe'])
  const { stdout, stderr } = child
  if (!stdout || !stderr) throw new Error('A command without its streams.')
  stderr.on('data', (piece: Buffer) => {
    const [, done, of] = /(\d+)\/(\d+)\n$/.exec(String(piece)) ?? []
    if (done !== undefined) home.brasstagExport = { done: Number(done), of: Number(of) }
  })
  const archive = new Readable({
    read: () => void stdout.resume(),
    destroy: (error, done) => {
      child.kill('SIGTERM')
      done(error)
    },
  })
  stdout.on('data', (piece: Buffer) => {
    if (!archive.push(piece)) stdout.pause()
  })
  child.on('error', (error) => archive.destroy(error))
  child.on('close', (code) => {
    delete home.brasstagExport
    if (code === 0) archive.push(null)
    else {
      log.error({ code }, 'export')
      archive.destroy(new Error('The export broke off.'))
    }
  })
  return Readable.toWeb(archive) as ReadableStream<Uint8Array>
}
