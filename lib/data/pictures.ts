import 'server-only'
import sharp from 'sharp'
import { RefusedError } from '@/lib/core/errors'

/** A picture as it is kept: a JPEG of our own making, with nothing in it but the picture. */
export type Picture = { readonly bytes: Uint8Array; readonly widthPx: number; readonly heightPx: number }

/** More than any telephone takes, and little enough that decoding it cannot fill the memory. */
const mostPixels = 64_000_000
const quality = 82

type Format = 'jpeg' | 'png' | 'webp' | 'heif'

const at = (bytes: Uint8Array, from: number, length: number): string =>
  Buffer.from(bytes.subarray(from, from + length)).toString('latin1')

/**
 * What a file is by its first bytes. Nothing else than these four ever reaches a decoder: whatever a file is called, a
 * drawing or a page with script in it is not opened at all.
 */
function formatOf(bytes: Uint8Array): Format | null {
  if (at(bytes, 0, 3) === '\xff\xd8\xff') return 'jpeg'
  if (at(bytes, 0, 8) === '\x89PNG\r\n\x1a\n') return 'png'
  if (at(bytes, 0, 4) === 'RIFF' && at(bytes, 8, 4) === 'WEBP') return 'webp'
  if (at(bytes, 4, 4) === 'ftyp' && /^(avi[fs]|hei[cfsx]|hev[cx]|mi[af]1|msf1)$/.test(at(bytes, 8, 4))) return 'heif'
  return null
}

const unreadable = (message: string): RefusedError => new RefusedError({ code: 'unreadable', message })

const noPicture = (): RefusedError =>
  unreadable('This is not a picture that can be kept here. Take a photo, or choose a JPEG, PNG, WebP or AVIF picture.')
const damaged = (): RefusedError =>
  unreadable('This picture is damaged or not whole. Take it again, or choose another.')
const foreignCoding = (): RefusedError =>
  unreadable('This kind of picture (HEIC) cannot be read here. Set the camera to JPEG (“most compatible”) and take it again.')
const tooManyPixels = (): RefusedError =>
  new RefusedError({
    code: 'out-of-range',
    message: `This picture has more than ${mostPixels / 1_000_000} million pixels. Take it again with a smaller setting.`,
  })

/**
 * Reads what came up and makes the picture that is kept: turned upright, no edge longer than `longestEdgePx`, a new JPEG
 * without anything that was written into the old one (place, camera, owner).
 */
export async function readPicture(bytes: Uint8Array, longestEdgePx: number): Promise<Picture> {
  const format = formatOf(bytes)
  if (format === null) throw noPicture()
  await refuseBySize(bytes, format)
  try {
    const { data, info } = await sharp(bytes, { limitInputPixels: mostPixels, failOn: 'error' })
      .autoOrient()
      .resize({ width: longestEdgePx, height: longestEdgePx, fit: 'inside', withoutEnlargement: true })
      .flatten({ background: 'white' })
      .toColourspace('srgb')
      .jpeg({ quality })
      .timeout({ seconds: 30 })
      .toBuffer({ resolveWithObject: true })
    return { bytes: data, widthPx: info.width, heightPx: info.height }
  } catch {
    throw format === 'heif' ? foreignCoding() : damaged()
  }
}

/** The header alone tells how large a picture would become: it is looked at before anything is decoded. */
async function refuseBySize(bytes: Uint8Array, format: Format): Promise<void> {
  const header = await sharp(bytes, { limitInputPixels: false, failOn: 'error' })
    .metadata()
    .catch(() => null)
  if (header?.format !== format) throw format === 'heif' ? foreignCoding() : damaged()
  if (header.width * header.height > mostPixels) throw tooManyPixels()
}

/** The same picture, small enough for a list. */
export async function smallPicture(bytes: Uint8Array, longestEdgePx: number): Promise<Uint8Array<ArrayBuffer>> {
  const small = await sharp(bytes)
    .resize({ width: longestEdgePx, height: longestEdgePx, fit: 'inside', withoutEnlargement: true })
    .jpeg({ quality })
    .toBuffer()
  return new Uint8Array(small)
}
