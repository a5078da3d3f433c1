import type { Drawing, Mark, TextMark } from '@/lib/drawing/marks'
import { wordsWidth, type Face } from '@/lib/pdf/fonts'

type Box = {
  readonly what: string
  readonly left: number
  readonly right: number
  readonly top: number
  readonly bottom: number
}

const faceOf = ({ face, bold }: TextMark): Face => (bold ? `${face}-bold` : face)
const shareBefore = { start: 0, middle: 0.5, end: 1 } as const

/** Where words stand, in the widths of the faces themselves: from the top of a capital to below a descender. */
function boxOfWords(mark: TextMark): Box {
  const width = wordsWidth(mark.text, faceOf(mark)) * mark.sizeMm
  const left = mark.x - width * shareBefore[mark.anchor]
  return {
    what: mark.text,
    left,
    right: left + width,
    top: mark.y - 0.72 * mark.sizeMm,
    bottom: mark.y + 0.2 * mark.sizeMm,
  }
}

/** A box for each stroke of a path, and one for each filled or closed part of it. */
function boxesOfPath(mark: Exclude<Mark, TextMark>): Box[] {
  const half = (mark.stroke?.widthMm ?? 0) / 2
  return mark.d.split(/(?=M)/).map((part) => {
    const all = (part.match(/-?[\d.]+/g) ?? []).map(Number)
    const [xs, ys] = [all.filter((_, i) => i % 2 === 0), all.filter((_, i) => i % 2 === 1)]
    return {
      what: `path ${part.slice(0, 40)}`,
      left: Math.min(...xs) - half,
      right: Math.max(...xs) + half,
      top: Math.min(...ys) - half,
      bottom: Math.max(...ys) + half,
    }
  })
}

const meet = (a: Box, b: Box): boolean => a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom

/** Words that stand on other words or on a mark, or outside the drawing; [] when every word is clear. */
export function unclearWords({ marks, widthMm, heightMm }: Drawing): string[] {
  const words = marks.flatMap((mark) => (mark.kind === 'text' ? [boxOfWords(mark)] : []))
  const paths = marks.flatMap((mark) => (mark.kind === 'path' ? boxesOfPath(mark) : []))
  return words.flatMap((word, place) => [
    ...[...words.slice(place + 1), ...paths]
      .filter((other) => meet(word, other))
      .map((other) => `“${word.what}” on ${other.what}`),
    ...(word.left < 0 || word.right > widthMm || word.top < 0 || word.bottom > heightMm
      ? [`“${word.what}” sticks out`]
      : []),
  ])
}

/** Marks that leave the drawing. */
export const marksOutside = ({ marks, widthMm, heightMm }: Drawing): string[] =>
  marks
    .flatMap((mark) => (mark.kind === 'path' ? boxesOfPath(mark) : []))
    .filter(({ left, right, top, bottom }) => left < 0 || right > widthMm || top < 0 || bottom > heightMm)
    .map(({ what }) => what)

/** Whole numbers as if by chance, the same at every run (a linear congruential generator, Numerical Recipes). */
export function chance(seed: number): (below: number) => number {
  let state = seed >>> 0
  return (below) => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0
    return Math.floor((state / 2 ** 32) * below)
  }
}
