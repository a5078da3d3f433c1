import type { EstimateAnswer, EstimateLine } from '@/lib/core/options/estimate'
import { cutSection } from '@/lib/drawing/cut-section'
import { cutCautionText } from '@/lib/words/cut-cautions'
import type { EstimateData } from './estimate-data'
import {
  beside,
  drawing,
  finishPaper,
  gap,
  heading,
  need,
  newPage,
  paragraph,
  roomLeft,
  startPaper,
  within,
  type Paper,
} from './layout'
import { listBlock, type Block } from './parts'
import { shopAndTitle } from './shop-and-title'
import { table, tableHeight } from './table'
import type { PrintSetting } from './print-setting'

export type { EstimateData } from './estimate-data'

/** One page: what was asked, what it takes, what follows, what it costs. A plan, and it says so. */
export async function estimatePaper(data: EstimateData, setting: PrintSetting): Promise<Uint8Array> {
  const paper = startPaper({
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
  for (const words of [...notesOf(data), caution]) paragraph(paper, words, { sizeMm: smallMm })
  gap(paper, 1)
  const rest = pictureAndCut(paper, data, answer.groups.map(groupBlock))
  columns(paper, [
    ...rest,
    ...listBlock('Cautions', answer.cautions.map(cutCautionText), smallMm),
    ...workBlock(answer),
  ])
  return finishPaper(paper)
}

const caution =
  'An estimate. Nominal figures are measured before any cut. Check piston, valve and bolt figures at assembly. Makers’ instructions come first.'

const notesOf = ({ note, answer }: EstimateData): string[] => [...(note === '' ? [] : [note]), ...unknownWords(answer)]

/** What could not be said, in one sentence: the paper is for a customer, who may know the figures. */
function unknownWords({ unknown }: EstimateAnswer): string[] {
  if (unknown.length === 0) return []
  const labels = unknown.map(({ label }) => label.charAt(0).toLowerCase() + label.slice(1))
  const needs = [...new Set(unknown.flatMap((line) => line.needs))]
  return [`Not computed: ${labels.join(', ')}. It needs ${needs.join(', ')}.`]
}

const top = (paper: Paper, data: EstimateData): void =>
  shopAndTitle(paper, {
    shop: data.shop,
    title: `Estimate ${data.number}`,
    block: [
      ['For', data.forWhom],
      ['Head', data.casting],
      ['Given', `${data.on}, ${data.by}`],
    ],
  })

function priceWords({ price, answer }: EstimateData): string {
  const without = answer.unpriced.length === 0 ? '' : `; not yet priced: ${answer.unpriced.join('; ')}`
  return `${price} a head by the shop’s list, before tax${without}.`
}

const columnGapMm = 6
const smallMm = 2.9
/** The section is drawn for a wider sheet and set smaller: its words stay readable at arm's length. */
const sectionShare = 0.78

/** The section at the left, beside it the cut's own figures and as many groups as are no higher; returns the others. */
function pictureAndCut(
  paper: Paper,
  { answer, chamberShape }: EstimateData,
  groups: readonly Block[],
): readonly Block[] {
  const { left, right } = paper
  const widthMm = (right - left) * 0.52
  const section = cutSection({ ...answer.drawing, chamberShape, widthMm: widthMm / sectionShare })
  const heightMm = (section.heightMm * widthMm) / section.widthMm
  const cut = groupBlock({ title: 'The cut', lines: answer.lines })
  const fitting = fittingFrom([cut, ...groups], right - left - widthMm - columnGapMm, heightMm)
  const count = Math.max(1, fitting)
  need(paper, heightMm)
  beside(paper, [
    () => {
      paper.y += drawing(paper, section, { widthMm })
    },
    () =>
      within(paper, left + widthMm + columnGapMm, right, (part) =>
        [cut, ...groups].slice(0, count).forEach((block) => block.draw(part)),
      ),
  ])
  return groups.slice(count - 1)
}

/** How many blocks, from the first, are together no higher than so much. */
function fittingFrom(blocks: readonly Block[], widthMm: number, heightMm: number): number {
  let left = heightMm
  const over = blocks.findIndex((block) => (left -= block.heightMm(widthMm)) < 0)
  return over === -1 ? blocks.length : over
}

/** Blocks in two columns of about the same height where that fits; full columns, and the rest on new pages, where not. */
function columns(paper: Paper, blocks: readonly Block[]): void {
  if (blocks.length === 0) return
  const { left, right } = paper
  const half = (right - left - columnGapMm) / 2
  const heights = blocks.map(({ heightMm }) => heightMm(half))
  const first = halfWay(heights)
  const [one, two] = [blocks.slice(0, first), blocks.slice(first)]
  const sum = (part: readonly Block[]) => part.reduce((all, block) => all + block.heightMm(half), 0)
  if (Math.max(sum(one), sum(two)) <= roomLeft(paper)) return sideBySide(paper, one, two)
  const filled = Math.max(1, fittingFrom(blocks, half, roomLeft(paper)))
  const more = fittingFrom(blocks.slice(filled), half, roomLeft(paper))
  sideBySide(paper, blocks.slice(0, filled), blocks.slice(filled, filled + more))
  if (filled + more === blocks.length) return
  newPage(paper)
  columns(paper, blocks.slice(filled + more))
}

function sideBySide(paper: Paper, ...parts: readonly (readonly Block[])[]): void {
  const { left, right } = paper
  const half = (right - left - columnGapMm) / 2
  beside(
    paper,
    parts.map((part, i) => () => {
      const from = left + i * (half + columnGapMm)
      within(paper, from, from + half, (inner) => part.forEach(({ draw }) => draw(inner)))
    }),
  )
}

/** How many of them, from the first, leave the taller of two columns lowest. */
function halfWay(heights: readonly number[]): number {
  const sum = (part: readonly number[]): number => part.reduce((all, heightMm) => all + heightMm, 0)
  const taller = (at: number): number => Math.max(sum(heights.slice(0, at)), sum(heights.slice(at)))
  return heights.map((_, at) => at + 1).reduce((best, at) => (taller(at) < taller(best) ? at : best), 1)
}

const groupBlock = ({ title, lines }: EstimateAnswer['groups'][number]): Block => ({
  heightMm: (widthMm) => titleMm + tableHeight(pairColumns, lines.map(pair), widthMm, smallMm) - 6,
  draw: (part) => group(part, title, lines),
})

/** The steps in one run of words: on a shelf of paper there is no room for eighteen lines. */
const workBlock = ({ steps }: EstimateAnswer): Block[] =>
  steps.length === 0
    ? []
    : listBlock(
        'Other work needed',
        [steps.map(({ label, outside }) => (outside ? `${label} (at a vendor)` : label)).join('; ')],
        smallMm,
      )

const titleMm = 9
const pairColumns = [
  { label: '', share: 1 },
  { label: '', share: 1.8, face: 'text-bold' },
] as const

function group(paper: Paper, title: string, lines: readonly EstimateLine[]): void {
  heading(paper, title)
  table(paper, pairColumns, lines.map(pair), { sizeMm: smallMm })
}

const pair = ({ label, value, note }: EstimateLine): readonly [string, string] => [
  label,
  note === '' ? value : value === '' ? note : `${value}; ${note}`,
]
