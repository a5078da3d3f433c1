import { headScale } from '@/lib/drawing/head-scale'
import { drawWords, paperColours, pointsPerMm } from './canvas'
import { wordsWidth } from './fonts'
import type { JobSheetData, JobSheetHead, JobSheetOwed, JobSheetStep } from './job-sheet-data'
import {
  drawing, finishPaper, gap, heading, list, need, newPage, paragraph, startPaper,
  type Paper,
} from './layout' // prettier-ignore
import { bigFigures, facts, headDrawings, tagHead, titledList } from './parts'
import type { PrintSetting } from './print-setting'

export type { JobSheetData, JobSheetHead, JobSheetOwed, JobSheetStep } from './job-sheet-data'

/** The paper that goes with the heads through the shop, usable for a day without the network. A page or more a head. */
export async function jobSheet(data: JobSheetData, setting: PrintSetting): Promise<Uint8Array> {
  const paper = await startPaper({
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

function headPages(paper: Paper, data: JobSheetData, head: JobSheetHead): void {
  tagHead(paper, {
    tag: head.tag,
    qrText: head.qrText,
    title: `Job ${data.jobNumber}`,
    lines: facts([
      ['', [data.customer, data.phone].filter((part) => part !== '').join(' · ')],
      ['Promised', [data.promised, data.urgency].filter((part) => part !== '').join(' · ')],
      ['Engine', data.engine],
      ['Casting', head.casting],
      ['Marks', head.marks],
    ]),
  })
  paragraph(paper, data.addressWarning, { face: 'text-bold' })
  const about = facts([
    ['Goes on', head.side],
    ['Pair with', head.pairTags.join(', ')],
    ['Place', head.place],
    ['Came with it', head.cameWith],
  ])
  paragraph(paper, about.join(' · '))
  titledList(paper, 'Ordered', data.ordered)
  heading(paper, head.planTitle)
  bigFigures(paper, head.planFigures)
  list(paper, head.planNotes)
  gap(paper, 2)
  headDrawings(paper, head.drawing)
  scale(paper, head)
  heading(paper, 'Steps and readings owed')
  head.steps.forEach((step, i) => stepRow(paper, step, i + 1))
  titledList(paper, 'Cautions', head.cautions)
  titledList(paper, 'Declined, not to be done', head.declined)
  titledList(paper, 'Waived', head.waivers)
  if (data.notes !== '') {
    heading(paper, 'Notes')
    paragraph(paper, data.notes)
  }
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
  titledList(paper, 'Ordered', data.ordered)
  paragraph(paper, 'No head has come in on this job yet.')
  paragraph(paper, data.notes)
}

function scale(paper: Paper, { graduations }: JobSheetHead): void {
  if (graduations.length === 0) return
  const picture = headScale(graduations, { widthMm: paper.right - paper.left, forHand: true })
  heading(paper, 'Route', picture.heightMm)
  paper.y += drawing(paper, picture)
}

const boxMm = 4
const numberMm = 13
const stationMm = 34
/** States that the empty or ticked box says already. */
const quiet: ReadonlySet<JobSheetStep['state']> = new Set(['to do', 'ready', 'done'])

/** Number and box as on the scale, the step, where, and a blank for each reading it owes. */
function stepRow(paper: Paper, step: JobSheetStep, number: number): void {
  if (step.state === 'not needed') return
  need(paper, 7 + Math.min(3, step.owes.length) * 6)
  gap(paper, 1.4)
  box(paper, paper.left, paper.y + 0.6, step.state === 'done')
  drawWords(paper.canvas, String(number), paper.left + numberMm - 2, paper.y + 4, {
    face: 'figure',
    sizeMm: 3.6,
    anchor: 'end',
  })
  drawWords(paper.canvas, step.station, paper.right, paper.y + 4, {
    face: 'text',
    sizeMm: 3.2,
    anchor: 'end',
    tone: 'faint',
  })
  const state = quiet.has(step.state) ? '' : ` (${step.state})`
  const widthMm = paper.right - paper.left - numberMm - stationMm
  paragraph(paper, `${step.label}${state}`, { face: 'text-bold', indentMm: numberMm, widthMm })
  for (const note of [step.outside, step.note]) paragraph(paper, note, { sizeMm: 3.2, indentMm: numberMm })
  for (const owed of step.owes) blanks(paper, owed)
  if (step.owes.length > 0) gap(paper, 1.6)
}

function box(paper: Paper, xMm: number, yMm: number, ticked: boolean): void {
  const { page } = paper.canvas
  const [x, y] = [xMm * pointsPerMm, page.getHeight() - (yMm + boxMm) * pointsPerMm]
  const side = boxMm * pointsPerMm
  page.drawRectangle({ x, y, width: side, height: side, borderWidth: 0.8, borderColor: paperColours.ink })
  if (!ticked) return
  page.drawLine({ start: { x: x + 2, y: y + 5 }, end: { x: x + 4.5, y: y + 2 }, thickness: 1.4 })
  page.drawLine({ start: { x: x + 4.5, y: y + 2 }, end: { x: x + 10, y: y + 10 }, thickness: 1.4 })
}

const blankLineMm = 6.2
const blankMm = 17
const wordsLineMm = 60

/** "Finished cc, cc   1 ____  2 ____": as many to a line as fit; what was read already stands on its line. */
function blanks(paper: Paper, { label, unit, points }: JobSheetOwed): void {
  const style = { face: 'text', sizeMm: 3.3 } as const
  const ruleMm = unit === '' ? wordsLineMm : blankMm
  const name = unit === '' ? label : `${label}, ${unit}`
  const start = paper.left + numberMm
  const line = () => {
    need(paper, blankLineMm)
    paper.y += blankLineMm
  }
  line()
  drawWords(paper.canvas, name, start, paper.y, style)
  let x = start + wordsWidth(name, 'text') * style.sizeMm + 4
  for (const point of points) {
    const pointMm = point.label === '' ? 0 : wordsWidth(point.label, 'text-bold') * style.sizeMm + 1.2
    if (x + pointMm + ruleMm > paper.right) {
      line()
      x = start + 4
    }
    drawWords(paper.canvas, point.label, x, paper.y, { ...style, face: 'text-bold' })
    blankRule(paper, x + pointMm, ruleMm)
    drawWords(paper.canvas, point.value ?? '', x + pointMm + 1, paper.y - 0.3, { face: 'figure', sizeMm: 4 })
    x += pointMm + ruleMm + 3
  }
}

function blankRule(paper: Paper, xMm: number, widthMm: number): void {
  const { page } = paper.canvas
  const y = page.getHeight() - (paper.y + 0.7) * pointsPerMm
  const [from, to] = [xMm * pointsPerMm, (xMm + widthMm) * pointsPerMm]
  page.drawLine({ start: { x: from, y }, end: { x: to, y }, thickness: 0.5 })
}
