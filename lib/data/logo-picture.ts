import 'server-only'
import sharp from 'sharp'
import type { RefusedError } from '@/lib/core/errors'
import type { Picture } from './pictures'
import { inTurn } from './one-decoder'
import { formatOf, mostPixels, refuseByHeader, unreadable } from './picture-format'

const kinds = 'Choose a PNG, JPEG or WebP picture; a drawing (SVG, PDF) has to be saved as PNG first.'

const noPicture = (): RefusedError => unreadable(`This file cannot be used as a logo. ${kinds}`)
const damaged = (): RefusedError =>
  unreadable('This picture is damaged or not whole. Save it again, or choose another.')
const unseen = (): RefusedError =>
  unreadable('Nothing of this picture would be seen on white paper. Choose one that is drawn in dark on light.')

/** Lighter than this on all of the picture, and a printer leaves the paper white. */
const nearlyWhite = 245

type Room = { readonly widthPx: number; readonly heightPx: number }

/**
 * Reads what came up and makes the logo that is printed: upright, on white, no larger than its room, a PNG without
 * anything that was written into the old file. A PNG of eight bits and three colours: a paper takes it as it is.
 */
export async function readLogo(bytes: Uint8Array, room: Room): Promise<Picture> {
  const format = formatOf(bytes)
  if (format === null || format === 'heif') throw noPicture()
  await refuseByHeader(bytes, format, { damaged, tooManyPixels: 'Save it smaller.' })
  const logo = await inTurn(() => onWhite(bytes, room))
  const { channels } = await sharp(logo.bytes).stats()
  if (channels.every(({ min }) => min > nearlyWhite)) throw unseen()
  return logo
}

async function onWhite(bytes: Uint8Array, { widthPx, heightPx }: Room): Promise<Picture> {
  try {
    const { data, info } = await sharp(bytes, { limitInputPixels: mostPixels, failOn: 'error' })
      .autoOrient()
      // This kernel leaves flat colours flat: the file is smaller, and no edge prints with a halo.
      .resize({ width: widthPx, height: heightPx, fit: 'inside', kernel: 'cubic', withoutEnlargement: true })
      .flatten({ background: 'white' })
      .toColourspace('srgb')
      .png({ compressionLevel: 9, palette: false })
      .timeout({ seconds: 30 })
      .toBuffer({ resolveWithObject: true })
    return { bytes: data, widthPx: info.width, heightPx: info.height }
  } catch {
    throw damaged()
  }
}
