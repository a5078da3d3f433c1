import type { Turnaround } from '@/lib/core/shop/turnaround'
import { daysText } from '@/lib/core/shop/when-words'
import { dayMarks, dayScale, wordsMm, type DayScale } from './day-scale'
import { roughWidth } from './dimension'
import { filled, linePath, outlined, polygonPath, rectPath, stroked, text, type Drawing, type Mark } from './marks'

/** What one order has out. */
export type OutNow = {
  readonly tags: readonly string[]
  readonly vendor: string
  readonly days: number
  /** Days from the sending to the vendor's promise; null: none was given. */
  readonly promisedDays: number | null
  readonly usual: Turnaround | null
}

type Setting = {
  readonly title: string
  /** Several vendors in one picture: each line says which. */
  readonly withVendor: boolean
  readonly widthMm?: number
  readonly atLeastDays?: number
}

const rowMm = 12
const topMm = 1
/** Within a row: the words, then the bar with the promise under it. */
const wordsAtMm = 3.4
const [barTopMm, barBottomMm] = [5.6, 8]

/**
 * What is out now, a bar of days for each order, against what that vendor usually takes (median, nine of ten) and what was
 * promised. The part of a bar past the promise is solid, and the words say it: colour adds nothing.
 */
export function outNow(
  rows: readonly OutNow[],
  { title, withVendor, widthMm = 160, atLeastDays = 0 }: Setting,
): Drawing {
  const scale = dayScale(Math.max(atLeastDays, ...rows.map(farthestDay)), widthMm)
  const lineMm = topMm + rows.length * rowMm + 0.5
  const signs = legend(rows, lineMm + 10.5, widthMm)
  return {
    widthMm,
    heightMm: signs.bottomMm,
    title,
    description: rows.length === 0 ? 'Nothing is out.' : rows.map((row) => inWords(row, withVendor)).join(' '),
    marks: [
      ...rows.flatMap((row, place) => rowMarks(row, topMm + place * rowMm, scale, withVendor)),
      ...dayMarks(scale, lineMm, lineMm + 5),
      ...signs.marks,
    ],
  }
}

/** The day that the scale must reach for this order. */
export const farthestDay = ({ days, promisedDays, usual }: OutNow): number =>
  Math.max(days, promisedDays ?? 0, usual?.nineOfTenDays ?? 0)

const lateDays = ({ days, promisedDays }: OutNow): number =>
  promisedDays === null ? 0 : Math.max(0, days - promisedDays)

function rowMarks(row: OutNow, top: number, scale: DayScale, withVendor: boolean): Mark[] {
  const { x } = scale
  const state = stateWords(row)
  const room = scale.rightMm - scale.leftMm - roughWidth(state, wordsMm) - 3
  const barEnd = Math.max(x(row.days), x(0) + 0.6)
  const promised = row.promisedDays === null ? null : x(row.promisedDays)
  const [barTop, barBottom] = [top + barTopMm, top + barBottomMm]
  const tick = (days: number, dash?: readonly [number, number]) =>
    stroked(linePath([x(days), barTop - 0.8], [x(days), barBottom + 0.8]), 'ink', 0.6, dash)
  return [
    ...text([scale.leftMm, top + wordsAtMm], nameOf(row, withVendor, room), wordsMm, { bold: true }),
    ...text([scale.rightMm, top + wordsAtMm], state, wordsMm, { anchor: 'end', bold: lateDays(row) > 0 }),
    ...outlined(rectPath(x(0), barTop, barEnd - x(0), barBottom - barTop), 'ink', 0.3),
    ...(promised !== null && lateDays(row) > 0
      ? filled(rectPath(promised, barTop, barEnd - promised, barBottom - barTop), 'ink')
      : []),
    ...(row.usual ? [...tick(row.usual.medianDays), ...tick(row.usual.nineOfTenDays, nineDash)] : []),
    ...(promised === null ? [] : filled(promisePath(promised, barBottom + 0.4), 'ink')),
  ]
}

const nineDash = [1, 0.6] as const

const promisePath = (at: number, top: number): string =>
  polygonPath([
    [at, top],
    [at + 1.3, top + 2.2],
    [at - 1.3, top + 2.2],
  ])

function stateWords(row: OutNow): string {
  const late = lateDays(row)
  if (late > 0) return `${daysText(row.days)}, late by ${late}`
  return row.usual && row.days > row.usual.nineOfTenDays
    ? `${daysText(row.days)}, past nine of ten`
    : daysText(row.days)
}

/** The longest way to name it that has room. */
function nameOf({ tags, vendor }: OutNow, withVendor: boolean, room: number): string {
  const [first = ''] = tags
  const short = tags.length > 1 ? `${first} and ${tags.length - 1} more` : first
  const long = tags.join(', ')
  const ways = withVendor ? [`${long} · ${vendor}`, `${short} · ${vendor}`, short, first] : [long, short, first]
  return ways.find((words) => roughWidth(words, wordsMm) <= room) ?? cut(first, room)
}

/** A number of the shop's own may be longer than the room: its end is what tells it from others. */
const cut = (words: string, room: number): string =>
  `…${words.slice(-Math.max(1, Math.floor(room / roughWidth('0', wordsMm)) - 1))}`

/** What the signs mean, of those that stand in the picture; in as many lines as it takes. */
function legend(rows: readonly OutNow[], firstMm: number, widthMm: number): { marks: Mark[]; bottomMm: number } {
  const isUsual = rows.some(({ usual }) => usual !== null)
  const signs = [
    ...(isUsual
      ? [{ words: 'median', sign: (x: number, y: number) => stroked(linePath([x, y - 3], [x, y + 0.6]), 'ink', 0.6) }]
      : []),
    ...(isUsual
      ? [
          {
            words: 'nine of ten',
            sign: (x: number, y: number) => stroked(linePath([x, y - 3], [x, y + 0.6]), 'ink', 0.6, nineDash),
          },
        ]
      : []),
    ...(rows.some(({ promisedDays }) => promisedDays !== null)
      ? [{ words: 'promised', sign: (x: number, y: number) => filled(promisePath(x, y - 2.3), 'ink') }]
      : []),
    ...(rows.some((row) => lateDays(row) > 0)
      ? [
          {
            words: 'past the promise',
            sign: (x: number, y: number) => filled(rectPath(x - 1.3, y - 2.4, 2.6, 2.4), 'ink'),
          },
        ]
      : []),
  ]
  const marks: Mark[] = []
  let [x, y] = [5.5, firstMm]
  for (const { words, sign } of signs) {
    const wide = 2.5 + roughWidth(words, wordsMm)
    if (x + wide > widthMm && x > 5.5) [x, y] = [5.5, y + 5]
    marks.push(...sign(x, y), ...text([x + 2.5, y], words, wordsMm))
    x += wide + 5
  }
  return { marks, bottomMm: (signs.length === 0 ? firstMm - 5 : y) + 1.5 }
}

function inWords(row: OutNow, withVendor: boolean): string {
  const { promisedDays, usual } = row
  const late = lateDays(row)
  const told = [
    `${row.tags.join(', ')}${withVendor ? ` at ${row.vendor}` : ''} out ${daysText(row.days)}`,
    promisedDays === null ? 'no promise given' : `promised within ${daysText(promisedDays)}`,
    ...(late > 0 ? [`late by ${daysText(late)}`] : []),
    usual
      ? `usually ${daysText(usual.medianDays)}, nine of ten within ${daysText(usual.nineOfTenDays)}`
      : 'nothing came back yet',
  ]
  return `${told.join(', ')}.`
}
