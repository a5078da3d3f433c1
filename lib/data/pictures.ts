import 'server-only'
import sharp from 'sharp'
import type { RefusedError } from '@/lib/core/errors'
import { inTurn } from './one-decoder'
import { formatOf, mostPixels, refuseByHeader, unreadable } from './picture-format'

/** A picture as it is kept: a JPEG of our own making, with nothing in it but the picture. */
export type Picture = { readonly bytes: Uint8Array; readonly widthPx: number; readonly heightPx: number }

const quality = 82

type Decoded = { readonly data: Buffer; readonly info: { readonly width: number; readonly height: number } }
const kept = ({ data, info }: Decoded): Picture => ({ bytes: data, widthPx: info.width, heightPx: info.height })

const noPicture = (): RefusedError =>
  unreadable('This is not a picture that can be kept here. Take a photo, or choose a JPEG, PNG, WebP or AVIF picture.')
const damaged = (): RefusedError =>
  unreadable('This picture is damaged or not whole. Take it again, or choose another.')
const foreignCoding = (): RefusedError =>
  unreadable(
    'This kind of picture (HEIC) cannot be read here. Set the camera to JPEG (“most compatible”) and take it again.',
  )

/**
 * Reads what came up and makes the picture that is kept: turned upright, no edge longer than `longestEdgePx`, a new JPEG
 * without anything that was written into the old one (place, camera, owner).
 */
export async function readPicture(bytes: Uint8Array, longestEdgePx: number): Promise<Picture> {
  const format = formatOf(bytes)
  if (format === null) throw noPicture()
  const broken = format === 'heif' ? foreignCoding : damaged
  await refuseByHeader(bytes, format, { damaged: broken, tooManyPixels: 'Take it again with a smaller setting.' })
  return inTurn(() =>
    sharp(bytes, { limitInputPixels: mostPixels, failOn: 'error' })
      .autoOrient()
      .resize({ width: longestEdgePx, height: longestEdgePx, fit: 'inside', withoutEnlargement: true })
      .flatten({ background: 'white' })
      .toColourspace('srgb')
      .jpeg({ quality })
      .timeout({ seconds: 30 })
      .toBuffer({ resolveWithObject: true })
      .then(kept, () => Promise.reject(broken())),
  )
}

/** The same picture, small enough for a list. */
export async function smallPicture(bytes: Uint8Array, longestEdgePx: number): Promise<Uint8Array<ArrayBuffer>> {
  const small = await sharp(bytes)
    .resize({ width: longestEdgePx, height: longestEdgePx, fit: 'inside', withoutEnlargement: true })
    .jpeg({ quality })
    .toBuffer()
  return new Uint8Array(small)
}
