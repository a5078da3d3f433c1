import type { Turnaround } from '@/lib/core/shop/turnaround'
import { ticks } from './axis'
import {
  ellipsePath, filled, linePath, outlined, polygonPath, stroked, text, type Drawing, type Mark,
} from './marks' // prettier-ignore

/** Heads that are out now: together, how long, and whether past the vendor's promise. */
export type OutNow = { readonly tags: readonly string[]; readonly days: number; readonly late: boolean }

export type TurnaroundStrip = {
  readonly vendor: string
  /** Whole days that each head took which came back. */
  readonly daysTaken: readonly number[]
  readonly turnaround: Turnaround | null
  readonly out: readonly OutNow[]
}

const widthMm = 160
const heightMm = 30
const leftMm = 4
const rightMm = 4
const lineMm = 17

/**
 * How long one vendor takes, as one strip on a scale of days: a tick below the line for every head that came back (higher
 * where several took as long), the median and nine of ten named above it, and what is out now as a ring at its day, a
 * filled diamond with "late" where it is past the promise. Tells everything by shape and word; colour adds nothing.
 */
export function turnaroundStrip({ vendor, daysTaken, turnaround, out }: TurnaroundStrip): Drawing {
  const most = Math.max(1, ...daysTaken, ...out.map(({ days }) => days), turnaround?.nineOfTenDays ?? 0)
  const scale = ticks(most, 8).filter((day) => Number.isInteger(day))
  const end = scale.at(-1) ?? most
  const x = (days: number): number => leftMm + ((widthMm - leftMm - rightMm) * days) / Math.max(end, most)
  return {
    widthMm,
    heightMm,
    title: `Turnaround of ${vendor}`,
    description: describe({ vendor, daysTaken, turnaround, out }),
    marks: [
      ...stroked(linePath([leftMm, lineMm], [widthMm - rightMm, lineMm]), 'ink', 0.3),
      ...scale.flatMap((day) => dayMark(x(day), day, day === end)),
      ...stroked(returnsPath(daysTaken, x), 'ink', 0.5),
      ...(turnaround ? usual(turnaround, x) : []),
      ...out.flatMap((one) => outMark(x(one.days), one)),
    ],
  }
}

const dayMark = (at: number, day: number, last: boolean): Mark[] => [
  ...stroked(linePath([at, lineMm], [at, lineMm + 1]), 'faint', 0.25),
  ...text([at, heightMm - 1], last ? `${day} days` : String(day), 3.2, {
    anchor: day === 0 ? 'start' : last ? 'end' : 'middle',
  }),
]

/** One short stroke a head, one above the other where several took as many days. */
function returnsPath(daysTaken: readonly number[], x: (days: number) => number): string {
  const seen = new Map<number, number>()
  return daysTaken
    .map((days) => {
      const place = seen.get(days) ?? 0
      seen.set(days, place + 1)
      const top = lineMm + 1.5 + (place % 5) * 1.6
      return linePath([x(days), top], [x(days), top + 1.2])
    })
    .join('')
}

function usual({ medianDays, nineOfTenDays }: Turnaround, x: (days: number) => number): Mark[] {
  const [median, most] = [x(medianDays), x(nineOfTenDays)]
  const named = (at: number, y: number, words: string, dash?: readonly [number, number]): Mark[] => [
    ...stroked(linePath([at, y], [at, lineMm]), 'ink', 0.6, dash),
    // Near the end the words stand before their mark, so that none is cut off.
    ...text([at > widthMm - 30 ? at - 1 : at + 1, y + 2.6], words, 3.2, {
      anchor: at > widthMm - 30 ? 'end' : 'start',
      bold: true,
    }),
  ]
  return [...named(median, 0.5, 'median'), ...named(most, 4.5, 'nine of ten', [1.2, 0.8])]
}

function outMark(at: number, { late, tags }: OutNow): Mark[] {
  const y = lineMm - 2.4
  const words = `${tags.length}${late ? ' late' : ' out'}`
  const beside = at > widthMm - 22 ? ({ anchor: 'end' } as const) : ({ anchor: 'start' } as const)
  const shape = late
    ? filled(polygonPath([[at, y - 2], [at + 2, y], [at, y + 2], [at - 2, y]]), 'ink')
    : outlined(ellipsePath([at, y], 1.6), 'ink', 0.5) // prettier-ignore
  return [...shape, ...text([at + (beside.anchor === 'end' ? -3 : 3), y + 1.1], words, 3.2, beside)]
}

const days = (count: number): string => `${count} ${count === 1 ? 'day' : 'days'}`

function describe({ turnaround, out }: TurnaroundStrip): string {
  const usually = turnaround
    ? `Median ${days(turnaround.medianDays)}, nine of ten within ${days(turnaround.nineOfTenDays)}, from ${turnaround.count} heads that came back.`
    : 'Nothing has come back yet.'
  const now = out.map(
    ({ tags, days: since, late }) => `${tags.join(', ')} out ${days(since)}${late ? ', late' : ''}`,
  )
  return [usually, now.length === 0 ? '' : `Now: ${now.join('; ')}.`].filter(Boolean).join(' ')
}
