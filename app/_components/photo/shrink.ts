import { longestEdgePx } from '@/lib/schemas/photo-limits'

const quality = 0.85

/**
 * The picture upright and no larger than it is kept, as a JPEG. What this browser cannot read (HEIC, mostly) comes back
 * as it is: the server reads it, or says that it cannot.
 */
export async function shrink(file: Blob): Promise<Blob> {
  try {
    const picture = await createImageBitmap(file, { imageOrientation: 'from-image' })
    const scale = Math.min(1, longestEdgePx / Math.max(picture.width, picture.height))
    const canvas = document.createElement('canvas')
    canvas.width = Math.max(1, Math.round(picture.width * scale))
    canvas.height = Math.max(1, Math.round(picture.height * scale))
    canvas.getContext('2d')?.drawImage(picture, 0, 0, canvas.width, canvas.height)
    picture.close()
    return (await jpegOf(canvas)) ?? file
  } catch {
    return file
  }
}

const jpegOf = (canvas: HTMLCanvasElement): Promise<Blob | null> =>
  new Promise((resolve) => canvas.toBlob(resolve, 'image/jpeg', quality))
