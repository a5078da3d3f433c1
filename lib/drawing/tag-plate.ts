import { ellipsePath, filled, outlined, roundedPath, text, type Drawing } from './marks'

const heightMm = 16
const holeFromEndMm = 6
/** Of one figure of the condensed face, as a share of its size. */
const figureWidth = 0.47

/**
 * The tag that is wired to a head: brass plate, one hole, the number in large figures. The plate grows with the number.
 */
export function tagPlate(number: string): Drawing {
  const sizeMm = 11
  const wordMm = Math.max(4, number.length) * figureWidth * sizeMm
  const widthMm = Math.round(holeFromEndMm * 2 + wordMm + 6)
  return {
    widthMm,
    heightMm,
    title: `Tag ${number}`,
    description: `Brass tag with the number ${number}.`,
    marks: [
      ...outlined(roundedPath(0.3, 0.3, widthMm - 0.6, heightMm - 0.6, 2), 'on-brass', 0.3, 'brass'),
      ...filled(ellipsePath([holeFromEndMm, heightMm / 2], 2), 'ground'),
      ...text([holeFromEndMm + 3 + (widthMm - holeFromEndMm - 3) / 2, heightMm / 2 + sizeMm * 0.35], number, sizeMm, {
        anchor: 'middle',
        tone: 'on-brass',
        bold: true,
      }),
    ],
  }
}
