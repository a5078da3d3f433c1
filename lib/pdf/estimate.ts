import type { EstimateAnswer, EstimateLine } from '@/lib/core/options/estimate'
import { cutSection } from '@/lib/drawing/cut-section'
import type { EstimateData } from './estimate-data'
import {
  beside,
  drawing,
  finishPaper,
  gap,
  heading,
  list,
  need,
  paragraph,
  startPaper,
  within,
  type Paper,
} from './layout'
import { shopWords } from './logo'
import { facts, listBlock, type Block } from './parts'
import { table, tableHeight } from './table'
import type { PrintSetting } from './print-setting'

export type { EstimateData } from './estimate-data'

/** One page: what was asked, what it takes, what follows, what it costs. A plan, and it says so. */
export async function estimatePaper(data: EstimateData, setting: PrintSetting): Promise<Uint8Array> {
  const paper = await startPaper({
    title: `Estimate ${data.number}`,
    shopName: data.shop.name,
    language: data.language,
    setting,
  })
  const { answer } = data
  top(paper, data)
  paragraph(paper, answer.title, { face: 'text-bold', sizeMm: 5.6 })
  paragraph(paper, [answer.start, answer.effort].filter(Boolean).join('. ') + '.')
  if (data.price !== '') paragraph(paper, priceWords(data), { face: 'text-bold' })
  gap(paper, 2)
  const blocks = answer.groups.map(groupBlock)
  pictureAndCut(paper, data, blocks.slice(0, 1))
  columns(paper, [...blocks.slice(1), ...listBlock('Cautions', answer.cautions), ...workBlock(answer)])
  gap(paper, 2)
  list(paper, [...(data.note === '' ? [] : [data.note]), ...unknownWords(answer), footing])
  return finishPaper(paper)
}

const footing =
  'An estimate from the figures above: what is nominal is measured before anything is cut. Figures for pistons, valves and bolts are to be checked at assembly; the makers’ instructions come first.'

/** What could not be said, in one sentence: the paper is for a customer, who may know the figures. */
function unknownWords({ unknown }: EstimateAnswer): string[] {
  if (unknown.length === 0) return []
  const labels = unknown.map(({ label }) => label.charAt(0).toLowerCase() + label.slice(1))
  const needs = [...new Set(unknown.flatMap((line) => line.needs))]
  return [`Not computed: ${labels.join(', ')}. It needs ${needs.join(', ')}.`]
}

function top(paper: Paper, data: EstimateData): void {
  const half = (paper.left + paper.right) / 2
  const { left, right } = paper
  beside(paper, [
    () => within(paper, left, half - 4, (part) => shopWords(part, data.shop)),
    () =>
      within(paper, half + 4, right, (part) => {
        paragraph(part, `Estimate ${data.number}`, { face: 'text-bold', sizeMm: 5 })
        const lines = facts([
          ['For', data.forWhom],
          ['Head', data.casting],
          ['Given', `${data.on}, ${data.by}`],
        ])
        for (const line of lines) paragraph(part, line)
      }),
  ])
  gap(paper, 3)
}

function priceWords({ price, answer }: EstimateData): string {
  const without = answer.unpriced.length === 0 ? '' : `, without ${answer.unpriced.join(', ')}`
  return `${price} a head by the shop’s list${without}.`
}

const columnGapMm = 6
const smallMm = 3

/** The section at the left, the cut's own figures beside it. */
function pictureAndCut(
  paper: Paper,
  { answer, chamberShape }: EstimateData,
  besideCut: readonly Block[],
): void {
  const section = cutSection({ ...answer.drawing, chamberShape })
  const { left, right } = paper
  const widthMm = (right - left) * 0.55
  need(paper, (section.heightMm * widthMm) / section.widthMm)
  beside(paper, [
    () => {
      paper.y += drawing(paper, section, { widthMm })
    },
    () =>
      within(paper, left + widthMm + columnGapMm, right, (part) => {
        group(part, 'The cut', answer.lines)
        for (const block of besideCut) block.draw(part)
      }),
  ])
}

/** Blocks in two columns of about the same height: the paper stays one page. */
function columns(paper: Paper, blocks: readonly Block[]): void {
  const { left, right } = paper
  const half = (right - left - columnGapMm) / 2
  const split = halfWay(blocks.map(({ heightMm }) => heightMm(half)))
  const column = (from: number, part: readonly Block[]) => () =>
    within(paper, from, from + half, (inner) => part.forEach(({ draw }) => draw(inner)))
  beside(paper, [column(left, blocks.slice(0, split)), column(right - half, blocks.slice(split))])
}

/** How many of them, from the first, leave the taller of two columns lowest. */
function halfWay(heights: readonly number[]): number {
  const sum = (part: readonly number[]): number => part.reduce((all, heightMm) => all + heightMm, 0)
  const taller = (at: number): number => Math.max(sum(heights.slice(0, at)), sum(heights.slice(at)))
  return heights.map((_, at) => at + 1).reduce((best, at) => (taller(at) < taller(best) ? at : best), 0)
}

const groupBlock = ({ title, lines }: EstimateAnswer['groups'][number]): Block => ({
  heightMm: (widthMm) => titleMm + tableHeight(pairColumns, lines.map(pair), widthMm, smallMm) - 6,
  draw: (part) => group(part, title, lines),
})

/** The steps in one run of words: on a shelf of paper there is no room for eighteen lines. */
const workBlock = ({ steps }: EstimateAnswer): Block[] =>
  steps.length === 0
    ? []
    : listBlock('Work it makes necessary', [
        steps.map(({ label, outside }) => (outside ? `${label} (at a vendor)` : label)).join(', '),
      ])

const titleMm = 9
const pairColumns = [
  { label: '', share: 1 },
  { label: '', share: 1.5, face: 'text-bold' },
] as const

function group(paper: Paper, title: string, lines: readonly EstimateLine[]): void {
  heading(paper, title)
  table(paper, pairColumns, lines.map(pair), { sizeMm: smallMm })
}

const pair = ({ label, value, note }: EstimateLine): readonly [string, string] => [
  label,
  note === '' ? value : value === '' ? note : `${value}; ${note}`,
]
