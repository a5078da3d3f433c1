import { encode } from 'uqr'
import { filled, rectPath, type Drawing } from '@/lib/drawing/marks'

/** Blank modules that a reader needs all round. */
const quietModules = 4

/** A QR code of level Q (a quarter of it may be dirty) as one path, with its quiet zone. */
export function qrDrawing(words: string, widthMm: number): Drawing {
  const { data, size } = encode(words, { ecc: 'Q', border: 0 })
  const moduleMm = widthMm / (size + 2 * quietModules)
  // Each dark run of a row is one rectangle: rounding to hundredths would open gaps, so modules are snapped whole.
  const unit = Math.floor(moduleMm * 100) / 100
  const start = Math.round((widthMm - unit * size) * 50) / 100
  let d = ''
  data.forEach((row, y) => {
    for (let x = 0; x < row.length; x++) {
      if (!row[x]) continue
      const from = x
      while (row[x + 1]) x++
      d += rectPath(start + from * unit, start + y * unit, (x - from + 1) * unit, unit)
    }
  })
  return {
    widthMm,
    heightMm: widthMm,
    title: 'QR code',
    description: `QR code of ${words}`,
    marks: [...filled(rectPath(0, 0, widthMm, widthMm), 'ground'), ...filled(d, 'ink')],
  }
}
