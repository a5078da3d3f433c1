import type { HeadDrawing } from '@/lib/core/spec/head-drawing'
import type { Figure } from '@/lib/core/spec/spec-sheet'
import { headPlan } from '@/lib/drawing/head-plan'
import { headSection } from '@/lib/drawing/head-section'
import { tagPlate } from '@/lib/drawing/tag-plate'
import { drawWords } from './canvas'
import { wordsWidth } from './fonts'
import { beside, clip, drawing, gap, heading, list, listHeight, need, paragraph, within, type Paper } from './layout'
import { qrDrawing } from './qr'

type TagHead = {
  readonly tag: string
  readonly qrText: string
  readonly title: string
  readonly lines: readonly string[]
  /** Width of the plate of a number of the usual length; one that is longer is set smaller. */
  readonly plateMm?: number
  readonly lineMm?: number
}

/** Top of a paper: tag plate at the left, QR code at the right, the name of the paper and its lines between. */
export function tagHead(paper: Paper, { tag, qrText, title, lines, plateMm = 62, lineMm = 3.5 }: TagHead): void {
  const plate = tagPlate(tag)
  const qrMm = qrText === '' ? 0 : 27
  const scale = plateMm / Math.max(plate.widthMm, 49)
  need(paper, 34)
  const middle = [paper.left + plate.widthMm * scale + 5, paper.right - qrMm - 3] as const
  beside(paper, [
    () => {
      paper.y += drawing(paper, plate, { widthMm: plate.widthMm * scale })
    },
    () =>
      within(paper, middle[0], middle[1], (part) => {
        paragraph(part, title, { face: 'text-bold', sizeMm: 5.4 })
        for (const line of lines) paragraph(part, line, { sizeMm: lineMm })
      }),
    () => {
      if (qrMm === 0) return
      paper.y += drawing(paper, qrDrawing(qrText, qrMm), { xMm: paper.right - qrMm })
    },
  ])
  gap(paper, 2)
}

const unitMm = 5

export type BigFigures = {
  /** How many stand beside each other. */
  readonly abreast?: number
  readonly sizeMm?: number
}

/** The figures a machinist or a customer looks for, read from across the bench. */
export function bigFigures(paper: Paper, figures: readonly Figure[], more: BigFigures = {}): void {
  const { abreast = 4, sizeMm = 14 } = more
  for (let i = 0; i < figures.length; i += abreast) {
    bigFigureRow(paper, figures.slice(i, i + abreast), sizeMm)
  }
}

function bigFigureRow(paper: Paper, figures: readonly Figure[], mostMm: number): void {
  need(paper, mostMm + 16)
  const pitch = (paper.right - paper.left) / figures.length
  beside(
    paper,
    figures.map((figure, i) => () => {
      const left = paper.left + pitch * i
      within(paper, left, left + pitch - 3, (part) => bigFigure(part, figure, mostMm))
    }),
  )
  gap(paper, 1)
}

function bigFigure(paper: Paper, { label, value, unit, note }: Figure, mostMm: number): void {
  const room = paper.right - paper.left
  paragraph(paper, label, { face: 'text-bold', sizeMm: 3.5 })
  const unitRoom = unit === '' ? 0 : wordsWidth(unit, 'figure') * unitMm + 1.5
  const natural = wordsWidth(value, 'figure-bold')
  const sizeMm = Math.max(3.5, Math.min(mostMm, (room - unitRoom) / Math.max(natural, 0.1)))
  const shown = clip(value, 'figure-bold', sizeMm, room - unitRoom)
  paper.y += mostMm * 0.84
  drawWords(paper.canvas, shown, paper.left, paper.y, { face: 'figure-bold', sizeMm })
  const after = paper.left + wordsWidth(shown, 'figure-bold') * sizeMm + 1.5
  drawWords(paper.canvas, unit, after, paper.y, { face: 'figure', sizeMm: unitMm })
  gap(paper, 1.4)
  paragraph(paper, note, { sizeMm: 3.1 })
}

/** Plan and section of the head side by side. */
export function headDrawings(paper: Paper, head: HeadDrawing): void {
  const section = head.cutKind === 'none' ? null : headSection(head)
  const room = paper.right - paper.left
  const plan = headPlan(head)
  const planMm = section === null ? Math.min(room, plan.widthMm) : room * 0.6
  const heights = (plan.heightMm * planMm) / plan.widthMm
  need(paper, heights + 2)
  beside(paper, [
    () => {
      paper.y += drawing(paper, plan, { widthMm: planMm })
    },
    () => {
      if (section === null) return
      gap(paper, 3)
      paper.y += drawing(paper, section, { xMm: paper.right - room * 0.33, widthMm: room * 0.33 })
    },
  ])
}

/** A part with a title and a list; nothing at all when the list is empty. */
export function titledList(paper: Paper, title: string, items: readonly string[], sizeMm?: number): void {
  if (items.length === 0) return
  heading(paper, title)
  list(paper, items, sizeMm === undefined ? {} : { sizeMm })
}

/** A part of a paper that knows how high it will be between given edges. */
export type Block = {
  readonly heightMm: (widthMm: number) => number
  readonly draw: (paper: Paper) => void
}

const columnGapMm = 6
const titleMm = 12
const tallestMm = 90

/** Short blocks two and two beside each other; one that is long is written over the whole width. */
export function twoColumns(paper: Paper, blocks: readonly Block[]): void {
  const { left, right } = paper
  const half = (right - left - columnGapMm) / 2
  const waiting = [...blocks]
  for (let first = waiting.shift(); first; first = waiting.shift()) {
    const second = waiting[0]
    const heightMm = Math.max(first.heightMm(half), second?.heightMm(half) ?? Infinity)
    if (!second || heightMm > tallestMm) {
      first.draw(paper)
      continue
    }
    waiting.shift()
    need(paper, heightMm)
    beside(
      paper,
      [first, second].map((block, i) => () => {
        const from = left + i * (half + columnGapMm)
        within(paper, from, from + half, block.draw)
      }),
    )
  }
}

/** A titled list as a block, or none when the list is empty. */
export function listBlock(title: string, items: readonly string[], sizeMm?: number): Block[] {
  if (items.length === 0) return []
  return [
    {
      heightMm: (widthMm) => listHeight(items, widthMm, sizeMm) + titleMm,
      draw: (paper) => titledList(paper, title, items, sizeMm),
    },
  ]
}

/** "label: value" lines, label bold; pairs without a value are left out. */
export const facts = (pairs: readonly (readonly [label: string, value: string])[]): string[] =>
  pairs.filter(([, value]) => value !== '').map(([label, value]) => (label === '' ? value : `${label}: ${value}`))
