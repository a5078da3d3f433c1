import type { SpecChambers } from '@/lib/core/spec/spec-sheet'
import { roughWidth } from './dimension'
import {
  ellipsePath,
  filled,
  hatchPath,
  linePath,
  outlined,
  rectPath,
  stroked,
  text,
  type Drawing,
  type Mark,
  type Point,
} from './marks'

type Setting = { readonly widthMm: number; readonly heightMm: number }

/** One chamber at its place across: what was read before and after, where each lies, and its figure as it was typed. */
type Bar = {
  readonly chamber: string
  readonly x: number
  readonly before: Reading | null
  readonly after: Reading | null
}
type Reading = { readonly y: number; readonly words: string }

const title = 'Chambers before and after, cc'
const [leftMm, rightMm, topMm, footMm] = [13, 21, 6.5, 9.5]
const figureMm = 3.3
const noteMm = 2.9
/** A spread smaller than this is not blown up to fill the picture, in cc. */
const leastSpanCc = 1.5

/**
 * Each chamber before (open point) and after (solid point), figures at the points, on one scale with the target and its
 * tolerance as a hatched band. A solid line joins what was measured alike, a dashed one what nobody noted valves and plug
 * of; where they differ there are two strokes in its place, and words say so. Told by shape, so that it reads in grey.
 */
export function chamberBars(chambers: SpecChambers, { widthMm, heightMm }: Setting): Drawing {
  const { picture, rows } = chambers
  const empty = { widthMm, heightMm, title, description: inWords(chambers), marks: [] }
  if (!picture) return empty
  const { beforeCc, afterCc, target } = picture
  const known = [...beforeCc, ...afterCc].filter((cc) => cc !== null)
  if (known.length === 0) return empty
  const bands = target ? [target.cc - target.toleranceCc, target.cc + target.toleranceCc] : []
  const y = scaleOf([...known, ...bands], topMm + figureMm + 1, heightMm - footMm - figureMm - 1.5)
  const pitch = (widthMm - leftMm - rightMm) / rows.length
  const read = (cc: number | null | undefined, words: string | null): Reading | null =>
    cc === null || cc === undefined ? null : { y: y(cc), words: words ?? '' }
  const bars = rows.map((row, i): Bar => ({
    chamber: row.chamber,
    x: leftMm + pitch * (i + 0.5),
    before: read(beforeCc[i], row.beforeCc),
    after: read(afterCc[i], row.afterCc),
  }))
  const longest = Math.max(1, ...bars.flatMap(({ before, after }) => [before, after].map((r) => r?.words.length ?? 0)))
  const sizeMm = Math.min(figureMm, pitch / (longest * 0.5))
  const right = widthMm - rightMm
  return {
    ...empty,
    marks: [
      ...(target ? band(target, y, right) : []),
      ...stroked(linePath([leftMm, heightMm - footMm], [right, heightMm - footMm]), 'ink', 0.35),
      ...joins(bars, chambers),
      ...points(bars, 'before'),
      ...points(bars, 'after'),
      ...bars.flatMap((bar) => figures(bar, sizeMm)),
      ...bars.flatMap(({ x, chamber }) =>
        text([x, heightMm - footMm + 4], chamber, figureMm, { anchor: 'middle', bold: true }),
      ),
      ...names(bars),
      ...text([leftMm, heightMm - 1.2], 'chambers from the marked end, cc', noteMm),
      ...text([leftMm, 3.4], likeWords(chambers) ?? '', noteMm, { bold: true }),
    ],
  }
}

/** Millimetres down for a volume: all that is drawn between the two heights. */
function scaleOf(ccs: readonly number[], top: number, bottom: number): (cc: number) => number {
  const [least, most] = [Math.min(...ccs), Math.max(...ccs)]
  const span = Math.max(most - least, leastSpanCc)
  const from = (least + most - span) / 2
  return (cc) => bottom - ((cc - from) / span) * (bottom - top)
}

function band(
  { cc, toleranceCc }: { readonly cc: number; readonly toleranceCc: number },
  y: (cc: number) => number,
  right: number,
): Mark[] {
  const [top, bottom] = [y(cc + toleranceCc), y(cc - toleranceCc)]
  const edges = linePath([leftMm, top], [right, top]) + linePath([leftMm, bottom], [right, bottom])
  return [
    ...stroked(hatchPath(leftMm, top, right - leftMm, bottom - top, 1.3), 'faint', 0.15),
    ...stroked(edges, 'faint', 0.2),
    ...text([right + 1.2, (top + bottom) / 2 - 0.6], `target ${short(cc)}`, noteMm, { bold: true }),
    ...text([right + 1.2, (top + bottom) / 2 + 2.8], `± ${short(toleranceCc)} cc`, noteMm),
  ]
}

const short = (cc: number): string => String(Math.round(cc * 100) / 100)

const pointMm = 1

function points(bars: readonly Bar[], side: 'before' | 'after'): Mark[] {
  const path = bars
    .flatMap((bar) => {
      const read = bar[side]
      return read ? [ellipsePath([bar.x, read.y], pointMm)] : []
    })
    .join('')
  return side === 'before' ? outlined(path, 'ink', 0.35) : filled(path, 'ink')
}

/** The higher figure over its point, the lower one under it, on ground of its own over the hatching. */
function figures({ x, before, after }: Bar, sizeMm: number): Mark[] {
  const afterIsLower = !before || !after || after.y >= before.y
  const over = (y: number) => y - pointMm - 0.7
  const under = (y: number) => y + pointMm + 0.5 + sizeMm * 0.72
  const set = (read: Reading | null, y: number, bold: boolean): Mark[] => {
    if (!read) return []
    const half = roughWidth(read.words, sizeMm) / 2
    return [
      ...filled(rectPath(x - half, y - sizeMm * 0.74, 2 * half, sizeMm * 0.78), 'ground'),
      ...text([x, y], read.words, sizeMm, { anchor: 'middle', bold }),
    ]
  }
  return [
    ...set(before, afterIsLower ? over(before?.y ?? 0) : under(before?.y ?? 0), false),
    ...set(after, afterIsLower ? under(after?.y ?? 0) : over(after?.y ?? 0), true),
  ]
}

function joins(bars: readonly Bar[], chambers: SpecChambers): Mark[] {
  const pairs = bars.flatMap(({ x, before, after }) =>
    before && after && Math.abs(after.y - before.y) > 2 * pointMm ? [{ x, from: before.y, to: after.y }] : [],
  )
  const away = (from: number, to: number) => pointMm * Math.sign(to - from)
  const lines = pairs.map(({ x, from, to }) => linePath([x, from + away(from, to)], [x, to - away(from, to)])).join('')
  switch (likenessOf(chambers)) {
    case 'alike':
      return stroked(lines, 'ink', 0.4)
    case 'unlike':
      return stroked(pairs.map(({ x, from, to }) => breakPath([x, (from + to) / 2])).join(''), 'ink', 0.35)
    default:
      return stroked(lines, 'ink', 0.3, [1.2, 1])
  }
}

/** Two slanted strokes half way. */
const breakPath = ([x, y]: Point): string =>
  [-0.6, 0.6].map((shift) => linePath([x - 1.6, y + shift + 0.6], [x + 1.6, y + shift - 0.6])).join('')

/** "before" and "after" at the height of the first chamber's points, kept clear of each other. */
function names(bars: readonly Bar[]): Mark[] {
  const [first] = bars
  if (!first) return []
  const [before, after] = [first.before?.y, first.after?.y]
  const apart = 3.6
  const close = before !== undefined && after !== undefined && Math.abs(after - before) < apart
  const push = close ? (apart - Math.abs(after - before)) / 2 : 0
  const down = before !== undefined && after !== undefined && after < before ? -1 : 1
  const name = (y: number | undefined, words: string, by: number, bold: boolean): Mark[] =>
    y === undefined ? [] : text([leftMm - 1, y + by + 1], words, figureMm, { anchor: 'end', bold })
  return [...name(before, 'before', -push * down, false), ...name(after, 'after', push * down, true)]
}

type Likeness = 'alike' | 'unlike' | 'not noted' | 'one side'

/** Whether before and after may be held against each other: by whose valves and which plug were in. */
export function likenessOf({ rows, beforeWith, afterWith }: SpecChambers): Likeness {
  const sides = [rows.some(({ beforeCc }) => beforeCc !== null), rows.some(({ afterCc }) => afterCc !== null)]
  if (sides.includes(false)) return 'one side'
  if (beforeWith === '' || afterWith === '') return 'not noted'
  return beforeWith === afterWith ? 'alike' : 'unlike'
}

/** What stands in the picture when before and after are not to be held against each other; null: they are. */
export function likeWords(chambers: SpecChambers): string | null {
  switch (likenessOf(chambers)) {
    case 'unlike':
      return 'not like for like: other valves or another plug'
    case 'not noted':
      return 'valves and plug not noted both times: may not be like for like'
    default:
      return null
  }
}

function inWords(chambers: SpecChambers): string {
  const each = chambers.rows.map(
    ({ chamber, beforeCc, afterCc, remark }) =>
      `Chamber ${chamber}: ${beforeCc ?? 'not measured'} before, ${afterCc ?? 'not measured'} after${remark === '' ? '' : `, ${remark}`}.`,
  )
  const like = likenessOf(chambers) === 'alike' ? 'Measured alike before and after.' : likeWords(chambers)
  return [...each, chambers.target === null ? '' : `Target ${chambers.target}.`, like ?? '']
    .filter((part) => part !== '')
    .join(' ')
}

/** As wide as so many chambers need, so that no figure is set too small to read. */
export const chamberBarsWidth = (chambers: SpecChambers, least: number): number => {
  const longest = Math.max(
    4,
    ...chambers.rows.flatMap(({ beforeCc, afterCc }) => [beforeCc?.length ?? 0, afterCc?.length ?? 0]),
  )
  const each = roughWidth('0'.repeat(longest), figureMm) + 1
  return Math.max(least, leftMm + rightMm + chambers.rows.length * each)
}
