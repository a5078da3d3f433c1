import sharp from 'sharp'

/** Invented pictures for the tests: a plain field of one colour. */
export const plain = (width: number, height: number, colour = '#8a9299') =>
  sharp({ create: { width, height, channels: 3, background: colour } })

export const jpeg = (width = 40, height = 30, colour?: string): Promise<Buffer> =>
  plain(width, height, colour).jpeg().toBuffer()

/** With a place, a camera and a turn by a quarter written into it, as a telephone writes them. */
export const telephoneJpeg = (): Promise<Buffer> =>
  plain(60, 20)
    .withExif({
      IFD0: { Make: 'Fernglas', Model: 'Nine', Orientation: '6' },
      IFD3: {
        GPSLatitudeRef: 'N',
        GPSLatitude: '51/1 30/1 0/1',
        GPSLongitudeRef: 'W',
        GPSLongitude: '0/1 7/1 0/1',
      },
    })
    .withMetadata({ orientation: 6 })
    .jpeg()
    .toBuffer()

export const svg = Buffer.from(
  '<svg xmlns="http://www.w3.org/2000/svg" width="40" height="30"><script>alert(1)</script></svg>',
)

export const html = Buffer.from('<!doctype html><title>head.jpg</title><script>alert(1)</script>')

export const gif = (): Promise<Buffer> => plain(8, 8).gif().toBuffer()
