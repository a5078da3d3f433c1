import type { SpecChambers } from '@/lib/core/spec/spec-sheet'
import { chamberBars, chamberBarsWidth } from '@/lib/drawing/chamber-bars'
import { beside, drawing, gap, heading, need, paragraph, within, type Paper } from './layout'
import { conditionLines } from './spec-sheet-conditions'
import { table } from './table'

const orDash = (value: string | null): string => value ?? '–'
const pictureMm = 35
/** More chambers than this stand across, under the picture: down, the table would be taller than it. */
const mostDown = 6

/** The picture, and every figure of it in a table. */
export function specChambers(paper: Paper, data: SpecChambers): void {
  heading(paper, 'Chambers, cc', 40)
  if (data.picture && data.rows.length <= mostDown) pictureBesideTable(paper, data)
  else {
    picture(paper, data, paper.right - paper.left)
    across(paper, data)
  }
  gap(paper, 0.8)
  const remarks = data.rows.flatMap(({ chamber, remark }) => (remark === '' ? [] : [`Chamber ${chamber}: ${remark}`]))
  const target = data.target === null ? [] : [`Target: ${data.target}`]
  const told = [...target, ...conditionLines(data.beforeWith, data.afterWith)].join(' · ')
  paragraph(paper, told, { sizeMm: 2.95 })
  for (const words of remarks) paragraph(paper, words, { sizeMm: 3.1, face: 'text-bold' })
}

function picture(paper: Paper, data: SpecChambers, mostMm: number): void {
  if (!data.picture) return
  need(paper, pictureMm)
  const widthMm = Math.min(mostMm, chamberBarsWidth(data, 116))
  paper.y += drawing(paper, chamberBars(data, { widthMm, heightMm: pictureMm }))
}

function pictureBesideTable(paper: Paper, data: SpecChambers): void {
  const { left, right } = paper
  const middle = left + Math.min(118, (right - left) * 0.62)
  need(paper, pictureMm)
  beside(paper, [
    () => within(paper, left, middle, (part) => picture(part, data, middle - left)),
    () => within(paper, middle + 5, right, (part) => down(part, data)),
  ])
}

/** Chambers down, before and after across. */
function down(paper: Paper, data: SpecChambers): void {
  const rows = [
    ...data.rows.map(({ chamber, beforeCc, afterCc }) => [chamber, orDash(beforeCc), orDash(afterCc)]),
    ['mean', orDash(data.meanBeforeCc), orDash(data.meanAfterCc)],
    ['spread', orDash(data.spreadBeforeCc), orDash(data.spreadAfterCc)],
  ]
  const columns = [
    { label: 'chamber', share: 1.5 },
    { label: 'before', share: 1, align: 'end' as const },
    { label: 'after', share: 1, align: 'end' as const, face: 'text-bold' as const },
  ]
  table(paper, columns, rows, { sizeMm: 3.1 })
}

/** Chambers across, before and after down: how a machinist writes them on a bench. */
function across(paper: Paper, data: SpecChambers): void {
  const columns = [
    { label: 'from the marked end', share: 2 },
    ...data.rows.map(({ chamber }) => ({ label: chamber, share: 1, align: 'end' as const })),
    { label: 'mean', share: 1.2, align: 'end' as const },
    { label: 'spread', share: 1.2, align: 'end' as const },
  ]
  const line = (name: string, of: 'beforeCc' | 'afterCc', mean: string | null, spread: string | null) => [
    name,
    ...data.rows.map((row) => orDash(row[of])),
    orDash(mean),
    orDash(spread),
  ]
  const rows = [
    line('before', 'beforeCc', data.meanBeforeCc, data.spreadBeforeCc),
    line('after', 'afterCc', data.meanAfterCc, data.spreadAfterCc),
  ]
  table(paper, columns, rows, { boldRows: new Set([1]), sizeMm: data.rows.length > 8 ? 2.9 : 3.4 })
}
