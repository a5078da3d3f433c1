import { headPlan } from '@/lib/drawing/head-plan'
import { headScale } from '@/lib/drawing/head-scale'
import { headSection } from '@/lib/drawing/head-section'
import { drawWords } from './canvas'
import { closer, columnMm, fitsHere, flowColumns, listLines } from './columns'
import type { JobSheetData, JobSheetHead } from './job-sheet-data'
import { stepLines } from './job-sheet-steps'
import {
  beside,
  drawing,
  finishPaper,
  gap,
  need,
  newPage,
  paragraph,
  rule,
  startPaper,
  within,
  type Paper,
} from './layout'
import { bigFigures, facts, tagHead } from './parts'
import type { PrintSetting } from './print-setting'

export type { JobSheetData, JobSheetHead, JobSheetOwed, JobSheetPoint, JobSheetStep } from './job-sheet-data'

/** The paper that goes with the heads through the shop, usable for a day without the network. A page a head, more when its readings need it. */
export async function jobSheet(data: JobSheetData, setting: PrintSetting): Promise<Uint8Array> {
  const paper = startPaper({
    title: `Job sheet ${data.jobNumber}`,
    shopName: data.shop.name,
    language: data.language,
    setting,
  })
  data.heads.forEach((head, i) => {
    if (i > 0) newPage(paper)
    headPages(paper, data, head)
  })
  if (data.heads.length === 0) orderOnly(paper, data)
  return finishPaper(paper)
}

const smallMm = 2.8

function headPages(paper: Paper, data: JobSheetData, head: JobSheetHead): void {
  tagHead(paper, {
    tag: head.tag,
    plateMm: 68,
    qrText: head.qrText,
    title: `Job ${data.jobNumber}`,
    lines: facts([
      ['', [data.customer, data.phone].filter((part) => part !== '').join(' · ')],
      ['Promised', [data.promised, data.urgency].filter((part) => part !== '').join(' · ')],
      ['Engine', data.engine],
      ['Casting', head.casting],
      ['Marks', head.marks],
    ]),
    lineMm: smallMm,
  })
  const about = facts([
    ['Bank or side', head.side],
    ['Pair with', head.pairTags.join(', ')],
    ['Place', head.place],
    ['Came with it', head.cameWith],
    ['Record', `revision ${head.revision}`],
  ])
  paragraph(paper, about.join(' · '), { sizeMm: smallMm })
  paragraph(paper, data.addressWarning, { face: 'text-bold', sizeMm: 2.8 })
  for (const line of head.stop) paragraph(paper, line, { face: 'text-bold', sizeMm: 5.4, tone: 'stop' })
  plan(paper, head)
  words(paper, data, head)
  steps(paper, data, head)
}

const columnGapMm = 5

/** The plan of the head at the left, what the mill has to know huge at the right. */
function plan(paper: Paper, head: JobSheetHead): void {
  const picture = headPlan(head.drawing)
  const heightMm = (picture.heightMm * pictureMm) / picture.widthMm
  const { left, right } = paper
  gap(paper, 1)
  need(paper, heightMm)
  beside(paper, [
    () => {
      gap(paper, 1)
      paper.y += drawing(paper, picture, { widthMm: pictureMm })
    },
    () =>
      within(paper, left + pictureMm + columnGapMm, right, (part) => {
        paragraph(part, head.planTitle, { face: 'text-bold', sizeMm: 4.6 })
        figuresAndSection(part, head)
      }),
  ])
  gap(paper, 0.6)
}

const pictureMm = 100

/** The figures two abreast, three where that spares a row, and the section where the last of them leaves room. */
function figuresAndSection(paper: Paper, { planFigures: figures, drawing: drawn }: JobSheetHead): void {
  const cut = drawn.cutKind !== 'none'
  const abreast = figures.length + Number(cut) > 4 ? 3 : 2
  const last = figures.length % abreast
  bigFigures(paper, figures.slice(0, figures.length - last), { abreast, sizeMm: 12 })
  const { left, right } = paper
  const middle = left + ((right - left) * last) / abreast
  const section = headSection(drawn)
  beside(paper, [
    () => {
      if (last === 0) return
      within(paper, left, middle, (part) =>
        bigFigures(part, figures.slice(figures.length - last), { abreast: last, sizeMm: 12 }),
      )
    },
    () => {
      if (!cut) return
      const widthMm = Math.min(right - middle, sectionMm)
      paper.y += drawing(paper, section, { xMm: right - widthMm, widthMm })
    },
  ])
}

const sectionMm = 44

/** What whoever works on the head has to know in words. */
function words(paper: Paper, data: JobSheetData, head: JobSheetHead): void {
  const onNewPage = () => continued(paper, data, head)
  const columns = { count: 3, gapMm: columnGapMm, wholeMm: 10, tight: true, onNewPage }
  const width = columnMm(paper, columns)
  const lists: readonly (readonly [string, readonly string[]])[] = [
    ['Ordered', head.ordered],
    ['Waiting for parts', head.waiting],
    ['Plan', head.planNotes],
    ['Cautions', head.cautions],
    ['Findings', head.findings],
    ['Declined, not to be done', head.declined],
    ['Waived', head.waivers],
    ['Notes', data.notes === '' ? [] : data.notes.split('\n')],
  ]
  gap(paper, 1)
  need(paper, 20)
  rule(paper)
  gap(paper, 1)
  flowColumns(
    paper,
    lists.map(([title, items]) => listLines(title, items, smallMm, width)),
    columns,
  )
}

/** The scale's graduations as a share of those on a screen: long ones of 6 mm read at arm's length. */
const scaleShare = 0.75
/** Less than this at the foot of a page is no place to begin the steps. */
const leastStepsMm = 40

/** The head's scale over the whole width, and under it every step with its box and its blanks, in two columns. */
function steps(paper: Paper, data: JobSheetData, head: JobSheetHead): void {
  if (head.steps.length === 0) return
  const widthMm = paper.right - paper.left
  const scale = headScale(head.graduations, { widthMm: widthMm / scaleShare, forHand: false })
  need(paper, scale.heightMm * scaleShare + leastStepsMm)
  gap(paper, 1)
  paper.y += drawing(paper, scale, { widthMm })
  // Nothing hangs below the edge: the numbers move up.
  if (!head.graduations.some(({ outside }) => outside)) paper.y -= 6
  numbers(paper, head.graduations.length)
  const onNewPage = () => continued(paper, data, head)
  const columns = { count: 2, gapMm: columnGapMm, wholeMm: 12, onNewPage }
  const width = columnMm(paper, columns)
  const set = (share: number) => head.steps.map((step, i) => closer(stepLines(step, i + 1, width / share), share))
  const share = closeness.find((one) => fitsHere(paper, set(one), columns)) ?? 1
  flowColumns(paper, set(share), columns)
}

/** The steps are set larger where there is room for it, and a little closer where that spares a page. */
const closeness = [1.15, 1.07, 1, 0.94, 0.88, 0.82] as const

/** Each graduation's number, under it, as it stands before the step. */
function numbers(paper: Paper, count: number): void {
  const pitch = (paper.right - paper.left) / count
  for (let i = 0; i < count; i++) {
    drawWords(paper.canvas, String(i + 1), paper.left + pitch * (i + 0.5), paper.y + 2.6, {
      face: 'figure',
      sizeMm: 2.8,
      anchor: 'middle',
    })
  }
  gap(paper, 3.6)
}

function continued(paper: Paper, data: JobSheetData, head: JobSheetHead): void {
  paragraph(paper, `${head.tag} · job ${data.jobNumber}, continued`, { face: 'text-bold', sizeMm: 5.4 })
  gap(paper, 1)
  rule(paper)
  gap(paper, 1)
}

/** A job whose heads are not here yet still has an order to print. */
function orderOnly(paper: Paper, data: JobSheetData): void {
  paragraph(paper, `Job ${data.jobNumber}`, { face: 'text-bold', sizeMm: 5.4 })
  for (const line of facts([
    ['', data.customer],
    ['Telephone', data.phone],
    ['Promised', data.promised],
    ['Engine', data.engine],
  ])) {
    paragraph(paper, line)
  }
  paragraph(paper, 'No head has come in on this job yet.')
  paragraph(paper, data.notes)
}
