import type { Turnaround } from '@/lib/core/shop/turnaround'
import { daysText } from '@/lib/core/shop/when-words'
import { dayMarks, dayScale, wordsMm, type DayScale } from './day-scale'
import { roughWidth } from './dimension'
import { linePath, stroked, text, type Drawing, type Mark } from './marks'

export type TurnaroundStrip = {
  readonly vendor: string
  /** Whole days that each head took which came back. */
  readonly daysTaken: readonly number[]
  readonly turnaround: Turnaround | null
  /** Room for so many days, where another picture beside it needs them. */
  readonly atLeastDays?: number
  readonly widthMm?: number
}

const lineMm = 11.5
/** Room of one head below the line, and of all that took as many days. */
const [pitchMm, headsMm] = [2, 8]

/**
 * How long one vendor takes, as one strip on a scale of days: a stroke below the line for every head that came back (one
 * under the other where several took as long), the median and nine of ten named above it. Tells everything by shape and
 * word; colour adds nothing.
 */
export function turnaroundStrip({
  vendor,
  daysTaken,
  turnaround,
  atLeastDays = 0,
  widthMm = 160,
}: TurnaroundStrip): Drawing {
  const returns = stacked(daysTaken)
  const most = Math.max(1, ...returns.map(({ place }) => place + 1))
  const heightMm = lineMm + 1.5 + Math.min(headsMm, most * pitchMm) + 5
  const scale = dayScale(Math.max(atLeastDays, ...daysTaken, turnaround?.nineOfTenDays ?? 0), widthMm)
  return {
    widthMm,
    heightMm,
    title: `Turnaround of ${vendor}`,
    description: describe(turnaround),
    marks: [
      ...dayMarks(scale, lineMm, heightMm - 1),
      ...stroked(returnsPath(returns, Math.min(pitchMm, headsMm / most), scale), 'ink', 0.5),
      ...(turnaround ? usual(turnaround, scale) : []),
    ],
  }
}

type Return = { readonly days: number; readonly place: number }

/** Heads that took as many days stand one under the other. */
function stacked(daysTaken: readonly number[]): Return[] {
  const counts = new Map<number, number>()
  return daysTaken.map((days) => {
    const place = counts.get(days) ?? 0
    counts.set(days, place + 1)
    return { days, place }
  })
}

const returnsPath = (returns: readonly Return[], pitch: number, { x }: DayScale): string =>
  returns
    .map(({ days, place }) => {
      const top = lineMm + 1.5 + place * pitch
      return linePath([x(days), top], [x(days), top + pitch * 0.75])
    })
    .join('')

/** The upper words' line passes the row of the lower words: these stand on the side where it does not. */
function usual({ medianDays, nineOfTenDays }: Turnaround, scale: DayScale): Mark[] {
  const nine = { at: scale.x(nineOfTenDays), words: 'nine of ten', dash: [1.2, 0.8] as const }
  const median = { at: scale.x(medianDays), words: 'median', dash: undefined }
  const fitsAfter = ({ at, words }: { at: number; words: string }) =>
    at + 1 + roughWidth(words, wordsMm) <= scale.rightMm
  const fitsBefore = ({ at, words }: { at: number; words: string }) => at - 1 - roughWidth(words, wordsMm) >= 0
  if (fitsAfter(nine)) return [...named(median, 1, 'after'), ...named(nine, 5.4, 'after')]
  return [...named(nine, 1, 'before'), ...named(median, 5.4, fitsBefore(median) ? 'before' : 'after')]
}

type Named = {
  readonly at: number
  readonly words: string
  readonly dash: readonly [number, number] | undefined
}

const named = ({ at, words, dash }: Named, topMm: number, side: 'before' | 'after'): Mark[] => [
  ...stroked(linePath([at, topMm], [at, lineMm]), 'ink', 0.6, dash),
  ...text([side === 'after' ? at + 1 : at - 1, topMm + 2.6], words, wordsMm, {
    anchor: side === 'after' ? 'start' : 'end',
    bold: true,
  }),
]

const describe = (turnaround: Turnaround | null): string =>
  turnaround
    ? `Median ${daysText(turnaround.medianDays)}, nine of ten within ${daysText(turnaround.nineOfTenDays)}, from ${turnaround.count} ${turnaround.count === 1 ? 'head' : 'heads'} that came back.`
    : 'Nothing has come back yet.'
