import type { SpecSheetData } from '@/lib/core/spec/spec-sheet'
import { headPlan } from '@/lib/drawing/head-plan'
import { headSection } from '@/lib/drawing/head-section'
import { tagPlate } from '@/lib/drawing/tag-plate'
import { drawWords } from './canvas'
import { wordsWidth } from './fonts'
import {
  beside,
  drawing,
  finishPaper,
  gap,
  heading,
  list,
  need,
  newPage,
  paragraph,
  roomLeft,
  startPaper,
  within,
  type Paper,
} from './layout'
import { besideLogo } from './logo'
import { bigFigures, facts } from './parts'
import type { PrintSetting } from './print-setting'
import { specChambers } from './spec-sheet-chambers'
import { secondPage, secondPageMm } from './spec-sheet-second'
import { table } from './table'
import { wrap } from './wrap'

/**
 * What the customer gets with the head. The first page is the one to pin up: what was asked and done, chambers before and
 * after, compression, the cuts as measured; the second says how it holds: flow, valves and seats, what was waived and
 * declined, cautions, who released it.
 */
export async function specSheet(data: SpecSheetData, setting: PrintSetting): Promise<Uint8Array> {
  const paper = startPaper({
    title: `Spec sheet ${data.tag}, job ${data.jobNumber}${data.revision > 1 ? `, revision ${data.revision}` : ''}`,
    shopName: data.shop.name,
    language: data.language,
    setting,
  })
  firstPage(paper, data)
  // A first page that ran over has begun the second; and a head that went back as it came has little to tell.
  const short = secondPageMm(data, paper.right - paper.left) < roomLeft(paper)
  if (paper.file.pages.length === 1 && !short) newPage(paper)
  else gap(paper, 4)
  secondPage(paper, data)
  return finishPaper(paper)
}

const smallMm = 3.1

function firstPage(paper: Paper, data: SpecSheetData): void {
  shopLine(paper, data)
  head(paper, data)
  bigFigures(paper, data.headline)
  pictures(paper, data)
  askedAndDone(paper, data)
  if (data.chambers) specChambers(paper, data.chambers)
  cuts(paper, data)
  totals(paper, data)
}

const outcomeWords = ({ outcome, releasedBy, releasedAt }: SpecSheetData): string =>
  `${outcome === 'released' ? 'Released' : 'Returned as is'} by ${releasedBy}, ${releasedAt}`

/** The shop at the left, what the paper is at the right. */
function shopLine(paper: Paper, data: SpecSheetData): void {
  const { left, right } = paper
  const middle = left + (right - left) * 0.58
  beside(paper, [
    () =>
      within(paper, left, middle, (part) => {
        besideLogo(part, data.shop, (words) => {
          paragraph(words, data.shop.name, { face: 'figure-bold', sizeMm: nameMm(words, data.shop.name) })
          paragraph(words, data.shop.lines.join(' · '), { sizeMm: smallMm })
        })
      }),
    () =>
      within(paper, middle + 4, right, (part) => {
        paragraph(part, data.revision > 1 ? `Spec sheet, revision ${data.revision}` : 'Spec sheet', {
          face: 'figure-bold',
          sizeMm: 6,
        })
        paragraph(part, outcomeWords(data), { sizeMm: smallMm })
        paragraph(part, data.revisionReason, { sizeMm: smallMm })
      }),
  ])
  gap(paper, 1.5)
}

/** Large, and on one line where it can be: beside a logo there is less room. */
function nameMm({ left, right }: Paper, name: string): number {
  const most = name.length > 30 ? 5.4 : 8
  return Math.max(5.4, Math.min(most, (right - left) / wordsWidth(name, 'figure-bold')))
}

/** Tag plate, whose head it is, and at the right where it goes: no two heads of a pair may be changed over. */
function head(paper: Paper, data: SpecSheetData): void {
  const plate = tagPlate(data.tag)
  const plateMm = Math.min(56, plate.widthMm * 1.1)
  const { left, right } = paper
  const sideMm = 50
  const middle = left + plateMm + 5
  need(paper, 26)
  beside(paper, [
    () => {
      paper.y += drawing(paper, plate, { widthMm: plateMm })
    },
    () =>
      within(paper, middle, right - sideMm - 4, (part) => {
        paragraph(part, data.customer, { face: 'text-bold', sizeMm: 4.8 })
        const lines = facts([
          ['Job', data.jobNumber],
          ['Engine', data.engine],
          ['Head', [data.casting, data.marks].filter((words) => words !== '').join(' · ')],
        ])
        for (const line of lines) paragraph(part, line, { sizeMm: smallMm })
      }),
    () =>
      within(paper, right - sideMm, right, (part) => {
        paragraph(part, 'Bank or side', { sizeMm: smallMm })
        paragraph(part, data.side ?? 'side not given', { face: 'figure-bold', sizeMm: 5.4 })
        const mates = data.pairTags.join(', ')
        paragraph(part, mates === '' ? '' : `Pair with ${mates}`, { sizeMm: smallMm })
      }),
  ])
  gap(paper, 1)
}

/** Plan, and section where something was cut, side by side. */
function pictures(paper: Paper, data: SpecSheetData): void {
  const section = data.drawing.cutKind === 'none' ? null : headSection(data.drawing)
  const room = paper.right - paper.left
  const plan = headPlan(data.drawing, section ? 118 : 130)
  const sectionMm = Math.min(58, room - plan.widthMm - 4)
  need(paper, plan.heightMm + 2)
  beside(paper, [
    () => {
      paper.y += drawing(paper, plan)
    },
    () => {
      if (section === null) return
      gap(paper, 2)
      paper.y += drawing(paper, section, { xMm: paper.right - sectionMm, widthMm: sectionMm })
    },
  ])
}

/** What was asked is short, what was done is not. */
const asksShare = 0.3
const listMm = 2.95

/** Beside each other while both fit on the page; else one after the other, over as many as they need. */
function askedAndDone(paper: Paper, { asked, done, notDone }: SpecSheetData): void {
  const { left, right } = paper
  const style = { sizeMm: listMm }
  const parts = [
    { title: 'Asked', items: asked, from: left, to: left + (right - left) * asksShare },
    { title: 'Done', items: done, from: left + (right - left) * asksShare + 5, to: right },
  ].filter(({ items }) => items.length > 0)
  const heights = parts.map(({ items, from, to }) => {
    const lines = items.flatMap((item) => wrap(item, 'text', listMm, to - from - 3.5))
    return 12 + lines.length * listMm * 1.32
  })
  const fits = Math.max(0, ...heights) < roomLeft(paper)
  const draw = (part: Paper, { title, items }: (typeof parts)[number]) => {
    heading(part, title)
    list(part, items, style)
  }
  if (fits) {
    beside(
      paper,
      parts.map((part) => () => within(paper, part.from, part.to, (narrow) => draw(narrow, part))),
    )
  } else for (const part of parts) draw(paper, part)
  if (notDone.length === 0) return
  heading(paper, 'Not done')
  list(paper, notDone, style)
}

const uncapitalised = (words: string): string => `${words.charAt(0).toLowerCase()}${words.slice(1)}`

/** Metal gone and compression, beside each other. */
function totals(paper: Paper, { removedSinceNew, compression: ratio }: SpecSheetData): void {
  const told = [
    ratio?.before ? `${ratio.before} before` : '',
    ratio?.after ? `${ratio.after} after` : '',
    ratio?.needs ? `not computed: ${uncapitalised(ratio.needs)}` : '',
  ].filter((words) => words !== '')
  const { left, right } = paper
  const middle = left + (right - left) * 0.54
  need(paper, 12)
  beside(paper, [
    () =>
      within(paper, left, told.length === 0 ? right : middle, (part) =>
        labelled(part, 'Removed since new', removedSinceNew),
      ),
    () =>
      within(paper, middle + 4, right, (part) =>
        labelled(part, told.length === 0 ? '' : 'Compression ratio', told.join(', ')),
      ),
  ])
}

/** What it is, then bold how much, on as many lines as it takes. */
function labelled(paper: Paper, label: string, value: string): void {
  if (label === '') return
  const sizeMm = 3.4
  const labelMm = wordsWidth(`${label}  `, 'text') * sizeMm
  gap(paper, 1)
  need(paper, sizeMm * 1.4)
  const y = paper.y + sizeMm * 1.32
  drawWords(paper.canvas, label, paper.left, y - sizeMm * 0.3, { face: 'text', sizeMm })
  paragraph(paper, value, { face: 'text-bold', sizeMm, indentMm: labelMm })
}

function cuts(paper: Paper, { cuts: made }: SpecSheetData): void {
  heading(paper, 'Cuts, as measured')
  if (made.length === 0) paragraph(paper, 'The deck was not cut.')
  else {
    table(
      paper,
      [
        { label: 'cut', share: 1.8 },
        { label: 'planned', share: 1.7 },
        { label: 'as measured', share: 2, face: 'text-bold' },
        { label: 'measured how', share: 3.4 },
        { label: 'where', share: 1.5 },
      ],
      made.map((cut) => [cut.what, cut.planned ?? '–', cut.measured ?? 'not measured', cut.how, cut.by]),
      { sizeMm: 2.9 },
    )
  }
}
