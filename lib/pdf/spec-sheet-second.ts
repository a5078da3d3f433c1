import type { SpecGroup, SpecSheetData } from '@/lib/core/spec/spec-sheet'
import { gap, heading, list, paragraph, roomLeft, within, type Paper } from './layout'
import { specFlow } from './spec-sheet-flow'
import { specValves, valvesMm } from './spec-sheet-valves'
import { table, tableHeight, type Column } from './table'
import { wrap } from './wrap'

const sizeMm = 3
const headingMm = 10
const gapMm = 6

/** How it holds: valves, seats, bolts, fit; flow lift by lift; waived, declined, cautions; who released it. */
export function secondPage(paper: Paper, data: SpecSheetData): void {
  paragraph(paper, `${data.tag} · job ${data.jobNumber} · ${data.customer}`, {
    face: 'text-bold',
    sizeMm: 4.2,
  })
  specFlow(paper, data.flow)
  if (data.valves) specValves(paper, data.valves)
  inColumns(paper, blocksOf(data))
  if (data.cutterMarks !== '') {
    gap(paper, 1.5)
    paragraph(paper, data.cutterMarks, { sizeMm: 3.2 })
  }
  if (data.cautions.length > 0) {
    heading(paper, 'Before it goes on the engine')
    list(paper, data.cautions, { sizeMm: 3.2 })
  }
  released(paper, data)
}

function blocksOf(data: SpecSheetData): Block[] {
  const waived = data.waivers.map(({ what, reason, by, at }) => `${what}: ${reason} (${by}, ${at})`)
  const declined = data.declined.map(({ what, how }) => (how === '' ? what : `${what} – ${how}`))
  return [
    ...data.groups.map(group),
    ...lines('Waived', waived),
    ...lines('Declined', declined),
    ...lines('Notes', data.notes),
  ]
}

/** How high all of it would be, set over the whole width: more than it takes. A flow run is always a page's matter. */
export function secondPageMm(data: SpecSheetData, widthMm: number): number {
  if (data.flow.length > 0) return Infinity
  const parts = [
    ...(data.valves ? [{ heightMm: () => valvesMm(data.valves, widthMm) }] : []),
    ...blocksOf(data),
    ...lines(
      '',
      [data.cutterMarks, ...data.cautions].filter((words) => words !== ''),
    ),
    ...lines('', ['', ...(data.earlier ?? []).map(() => '')]),
  ]
  return parts.reduce((sum, part) => sum + part.heightMm(widthMm), 12)
}

/** A part of the page that knows its height between given edges. */
type Block = { readonly heightMm: (widthMm: number) => number; readonly draw: (paper: Paper) => void }

const pair: readonly Column[] = [
  { label: '', share: 1 },
  { label: '', share: 1.6, face: 'text-bold' },
]

function group({ title, lines: of }: SpecGroup): Block {
  const rows = of.flatMap(({ label, value, wanted }) => [
    [label, value],
    ...(wanted ? [[`– ${wanted.label}`, wanted.value]] : []),
  ])
  return {
    heightMm: (widthMm) => headingMm + tableHeight(pair, rows, widthMm, sizeMm),
    draw: (paper) => {
      heading(paper, title)
      table(paper, pair, rows, { sizeMm })
    },
  }
}

function lines(title: string, items: readonly string[]): Block[] {
  if (items.length === 0) return []
  return [
    {
      heightMm: (widthMm) =>
        headingMm +
        items.reduce((sum, item) => sum + wrap(item, 'text', sizeMm, widthMm - 3.5).length, 0) * sizeMm * 1.32,
      draw: (paper) => {
        heading(paper, title)
        list(paper, items, { sizeMm })
      },
    },
  ]
}

/** Two columns, each block under the shorter one, while they fit on the page; else over the whole width. */
function inColumns(paper: Paper, blocks: readonly Block[]): void {
  const { left, right } = paper
  const half = (right - left - gapMm) / 2
  const columns: [Block[], Block[]] = [[], []]
  const heights: [number, number] = [0, 0]
  for (const block of blocks) {
    const shorter = heights[1] < heights[0] ? 1 : 0
    columns[shorter].push(block)
    heights[shorter] += block.heightMm(half)
  }
  if (Math.max(...heights) > roomLeft(paper)) {
    for (const block of blocks) block.draw(paper)
    return
  }
  const top = paper.y
  const ends = columns.map((column, i) => {
    paper.y = top
    const from = left + i * (half + gapMm)
    within(paper, from, from + half, (part) => {
      for (const block of column) block.draw(part)
    })
    return paper.y
  })
  paper.y = Math.max(top, ...ends)
}

/** By whom and when, and which sheets this one takes the place of. */
function released(paper: Paper, data: SpecSheetData): void {
  const { outcome, releasedBy, releasedAt, revision, revisionReason, earlier = [] } = data
  const which = revision > 1 ? ` This is revision ${revision}: ${revisionReason}.` : ''
  heading(paper, outcome === 'released' ? 'Released' : 'Returned as is', 6)
  paragraph(paper, `By ${releasedBy}, ${releasedAt}.${which}`, { sizeMm: 3.2, face: 'text-bold' })
  for (const old of earlier) {
    const why = old.reason === '' ? '' : ` (${old.reason})`
    paragraph(
      paper,
      `Takes the place of revision ${old.revision}${why}, released by ${old.releasedBy}, ${old.releasedAt}, which is kept.`,
      { sizeMm },
    )
  }
}
