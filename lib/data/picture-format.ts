import 'server-only'
import sharp from 'sharp'
import { RefusedError } from '@/lib/core/errors'

/** More than any telephone takes, and little enough that decoding it cannot fill the memory. */
export const mostPixels = 64_000_000

export type Format = 'jpeg' | 'png' | 'webp' | 'heif'

const at = (bytes: Uint8Array, from: number, length: number): string =>
  Buffer.from(bytes.subarray(from, from + length)).toString('latin1')

/**
 * What a file is by its first bytes. Nothing else than these four ever reaches a decoder: whatever a file is called, a
 * drawing or a page with script in it is not opened at all.
 */
export function formatOf(bytes: Uint8Array): Format | null {
  if (at(bytes, 0, 3) === '\xff\xd8\xff') return 'jpeg'
  if (at(bytes, 0, 8) === '\x89PNG\r\n\x1a\n') return 'png'
  if (at(bytes, 0, 4) === 'RIFF' && at(bytes, 8, 4) === 'WEBP') return 'webp'
  if (at(bytes, 4, 4) === 'ftyp' && /^(avi[fs]|hei[cfsx]|hev[cx]|mi[af]1|msf1)$/.test(at(bytes, 8, 4))) return 'heif'
  return null
}

export const unreadable = (message: string): RefusedError => new RefusedError({ code: 'unreadable', message })

/** The header alone tells how large a picture would become: it is looked at before anything is decoded. */
export async function refuseByHeader(
  bytes: Uint8Array,
  format: Format,
  refusals: { readonly damaged: () => RefusedError; readonly tooManyPixels: string },
): Promise<void> {
  const header = await sharp(bytes, { limitInputPixels: false, failOn: 'error' })
    .metadata()
    .catch(() => null)
  if (header?.format !== format) throw refusals.damaged()
  if (header.width * header.height <= mostPixels) return
  const message = `This picture has more than ${mostPixels / 1_000_000} million pixels. ${refusals.tooManyPixels}`
  throw new RefusedError({ code: 'out-of-range', message })
}
