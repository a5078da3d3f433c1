import type { SpecFlow, SpecFlowRow } from '@/lib/core/spec/spec-sheet'
import { flowCurves } from '@/lib/drawing/flow-curves'
import { beside, drawing, gap, heading, list, need, newPage, paragraph, roomLeft, within, type Paper } from './layout'
import { conditionLines } from './spec-sheet-conditions'
import { table, tableHeight, type Column } from './table'
import { wrap } from './wrap'

const curveMm = 43
const gapMm = 6
const sizeMm = 2.85
const noteMm = 2.8
const titleMm = 3.5

const columns: readonly Column[] = [
  { label: 'lift', share: 1.9 },
  { label: 'before, cfm', share: 1, align: 'end' },
  { label: 'after, cfm', share: 1, align: 'end' },
  { label: 'difference', share: 1.1, align: 'end' },
  { label: '%', share: 0.8, align: 'end' },
]
const withNotes: readonly Column[] = [...columns, { label: '', share: 3 }]

const orDash = (value: string | null): string => value ?? '–'
const rowsOf = ({ rows, means }: SpecFlow): readonly SpecFlowRow[] => [...rows, ...means]
const cells = ({ lift, before, after, diffCfm, diffPercent }: SpecFlowRow): string[] => [
  lift,
  orDash(before),
  orDash(after),
  orDash(diffCfm),
  orDash(diffPercent),
]
const isDrawn = ({ beforePoints, afterPoints }: SpecFlow): boolean => beforePoints.length + afterPoints.length > 0

export const flowTitle = ({ title, notLike }: SpecFlow): string =>
  notLike.length === 0 ? title : `${title} – not like for like`

/**
 * Each port's curve over its table, both ports beside each other; one port alone has its curve beside its table. Tables
 * that are too long for that follow each other over the whole width.
 */
export function specFlow(paper: Paper, runs: readonly SpecFlow[]): void {
  if (runs.length === 0) return
  heading(paper, 'Flow', curveMm)
  const { left, right } = paper
  const half = (right - left - gapMm) / 2
  const [only] = runs
  const alone = runs.length === 1 && only !== undefined && isDrawn(only)
  const height = Math.max(...runs.map((run) => heightOf(run, half))) + (alone ? 0 : curveMm + 8)
  if (height > roomLeft(paper) && height < paper.bottom - 14) newPage(paper)
  if (height > roomLeft(paper)) return oneAfterTheOther(paper, runs, half)
  const place = (i: number, draw: (part: Paper) => void) => () =>
    within(paper, left + i * (half + gapMm), left + i * (half + gapMm) + half, draw)
  if (alone) {
    return beside(paper, [place(0, (part) => column(part, only)), place(1, (part) => curve(part, only))])
  }
  for (let i = 0; i < runs.length; i += 2) {
    const pair = runs.slice(i, i + 2)
    beside(
      paper,
      pair.map((run, c) => place(c, (part) => curve(part, run))),
    )
    beside(
      paper,
      pair.map((run, c) => place(c, (part) => column(part, run))),
    )
  }
}

function curve(paper: Paper, run: SpecFlow): void {
  if (!isDrawn(run)) return
  const size = { title: run.title, widthMm: paper.right - paper.left, heightMm: curveMm }
  need(paper, curveMm + 6)
  paragraph(paper, flowTitle(run), { face: 'text-bold', sizeMm: titleMm })
  gap(paper, 0.8)
  paper.y += drawing(paper, flowCurves(run.beforePoints, run.afterPoints, { ...size, notLike: run.notLike.length > 0 }))
}

/** Lift by lift, and under it in small print what was set, what differs and what is remarked. */
function column(paper: Paper, run: SpecFlow): void {
  const rows = rowsOf(run)
  if (!isDrawn(run)) paragraph(paper, flowTitle(run), { face: 'text-bold', sizeMm: titleMm })
  if (rows.length > 0) {
    const boldRows = new Set(run.means.map((_, i) => run.rows.length + i))
    table(paper, columns, rows.map(cells), { sizeMm, boldRows })
  }
  gap(paper, 0.8)
  for (const words of under(run)) paragraph(paper, words, { sizeMm: noteMm })
}

const under = (run: SpecFlow): string[] => [
  ...run.notLike.map((words) => `Not like for like: ${words}`),
  ...remarks(rowsOf(run)),
  ...conditionLines(run.beforeConditions, run.afterConditions),
]

const heightOf = (run: SpecFlow, widthMm: number): number => {
  const lines = under(run).flatMap((words) => wrap(words, 'text', noteMm, widthMm))
  return 3 + tableHeight(columns, rowsOf(run).map(cells), widthMm, sizeMm) + lines.length * noteMm * 1.32
}

/** What is remarked of the lifts, each remark once with the lifts it is true of. */
export function remarks(rows: readonly SpecFlowRow[]): string[] {
  const lifts = new Map<string, string[]>()
  for (const { lift, note } of rows) {
    for (const part of note.split('; ').filter((words) => words !== '')) {
      lifts.set(part, [...(lifts.get(part) ?? []), lift])
    }
  }
  const ranges = [...lifts].filter(([part, at]) => isRange(part) && at.length > 0)
  const others = [...lifts].filter(([part]) => !isRange(part))
  return [
    ...others.map(([part, at]) => `${at.length === rows.length ? 'At every lift' : at.join(', ')}: ${part}`),
    ...(ranges.length === 0 ? [] : [ranges.map(([part, at]) => `${at.join(', ')}: ${part}`).join('; ')]),
  ]
}

/** The lifts a mean is taken over. */
const isRange = (part: string): boolean => /^[\d.,]+ to [\d.,]+ in$/.test(part)

function oneAfterTheOther(paper: Paper, runs: readonly SpecFlow[], half: number): void {
  const { left } = paper
  const drawn = runs.filter(isDrawn)
  for (let i = 0; i < drawn.length; i += 2) {
    need(paper, curveMm + 6)
    beside(
      paper,
      drawn.slice(i, i + 2).map((run, c) => () => {
        const from = left + c * (half + gapMm)
        within(paper, from, from + half, (part) => curve(part, run))
      }),
    )
  }
  for (const run of runs) wideTable(paper, run)
}

function wideTable(paper: Paper, run: SpecFlow): void {
  const rows = rowsOf(run)
  heading(paper, flowTitle(run))
  for (const words of conditionLines(run.beforeConditions, run.afterConditions)) {
    paragraph(paper, words, { sizeMm: noteMm })
  }
  list(paper, run.notLike, { sizeMm: noteMm, face: 'text-bold' })
  if (rows.length === 0) return
  const boldRows = new Set(run.means.map((_, i) => run.rows.length + i))
  table(
    paper,
    withNotes,
    rows.map((row) => [...cells(row), row.note]),
    { sizeMm, boldRows },
  )
}
