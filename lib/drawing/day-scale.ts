import { ticks } from './axis'
import { roughWidth } from './dimension'
import { linePath, stroked, text, type Mark } from './marks'

/** Words are read on a telephone as well, where a millimetre is some four pixels. */
export const wordsMm = 3.5
const sideMm = 4

/** Days from left to right: where each stands, and which are named. */
export type DayScale = {
  readonly x: (days: number) => number
  readonly named: readonly number[]
  readonly leftMm: number
  readonly rightMm: number
}

/** A scale that holds so many days, with as many of them named as there is room for. */
export function dayScale(mostDays: number, widthMm: number): DayScale {
  const [leftMm, rightMm] = [sideMm, widthMm - sideMm]
  const most = Math.max(1, mostDays)
  const each = roughWidth(String(Math.ceil(most)), wordsMm) + 4
  const named = ticks(most, Math.max(1, Math.floor((rightMm - leftMm) / each))).filter(Number.isInteger)
  const end = Math.max(most, named.at(-1) ?? most)
  return { x: (days) => leftMm + ((rightMm - leftMm) * days) / end, named, leftMm, rightMm }
}

/** The line of the scale with a short mark at each named day; the numbers stand at their own height, "days" at the last. */
export function dayMarks({ x, named, leftMm, rightMm }: DayScale, lineMm: number, numbersMm: number): Mark[] {
  const last = named.at(-1) ?? 0
  const lastWords = `${last} days`
  const lastLeft = rightMm + sideMm - 0.5 - roughWidth(lastWords, wordsMm)
  return [
    ...stroked(linePath([leftMm, lineMm], [rightMm, lineMm]), 'ink', 0.3),
    ...stroked(named.map((day) => linePath([x(day), lineMm], [x(day), lineMm + 1])).join(''), 'ink', 0.25),
    ...named.slice(0, -1).flatMap((day) =>
      // One too near to the last, which has the word beside it, is left out.
      x(day) + roughWidth(String(day), wordsMm) / 2 > lastLeft - 1
        ? []
        : text([x(day), numbersMm], String(day), wordsMm, { anchor: 'middle' }),
    ),
    ...text([rightMm + sideMm - 0.5, numbersMm], lastWords, wordsMm, { anchor: 'end' }),
  ]
}
