import { finishPaper, gap, need, newPage, paragraph, startPaper, within, beside, type Paper } from './layout'
import { shopWords } from './logo'
import type { OutsideSheetData, OutsideSheetHead } from './outside-sheet-data'
import { bigFigures, facts, headDrawings, listBlock, tagHead, titledList, twoColumns } from './parts'
import type { PrintSetting } from './print-setting'

export type { OutsideSheetData, OutsideSheetHead } from './outside-sheet-data'

/** The paper that travels to a vendor with the heads of one order: what to cut, off which edge, what to leave for us. */
export async function outsideSheet(data: OutsideSheetData, setting: PrintSetting): Promise<Uint8Array> {
  const paper = await startPaper({
    title: `Outside order ${data.orderNumber}`,
    shopName: data.shop.name,
    language: data.language,
    setting,
  })
  parties(paper, data)
  paragraph(paper, data.redo ?? '', { face: 'text-bold', sizeMm: 4.6 })
  paragraph(paper, data.addressWarning, { face: 'text-bold' })
  data.heads.forEach((head, i) => {
    if (i > 0) newPage(paper)
    headPart(paper, data, head)
  })
  twoColumns(paper, [
    ...listBlock('We check on return', data.checks),
    ...listBlock('Notes', data.notes === '' ? [] : data.notes.split('\n')),
  ])
  signatures(paper)
  return finishPaper(paper)
}

function parties(paper: Paper, data: OutsideSheetData): void {
  const half = (paper.left + paper.right) / 2
  const { left, right } = paper
  beside(paper, [
    () => within(paper, left, half - 4, (part) => shopWords(part, data.shop, data.contact)),
    () =>
      within(paper, half + 4, right, (part) => {
        paragraph(part, `Outside order ${data.orderNumber}`, { face: 'text-bold', sizeMm: 5 })
        for (const line of facts([
          ['To', data.vendor.name],
          ...data.vendor.lines.map((line) => ['', line] as const),
          ['Sent', data.sentOn],
          ['Promised back', data.promised],
          ['Heads', data.heads.map((head) => head.tag).join(', ')],
        ])) {
          paragraph(part, line)
        }
      }),
  ])
  gap(paper, 4)
}

function headPart(paper: Paper, data: OutsideSheetData, head: OutsideSheetHead): void {
  tagHead(paper, {
    tag: head.tag,
    qrText: head.qrText,
    title: `Order ${data.orderNumber}`,
    lines: facts([
      ['Casting', head.casting],
      ['Marks', head.marks],
    ]),
  })
  titledList(paper, 'What to do', head.work)
  gap(paper, 1)
  bigFigures(paper, head.figures)
  paragraph(paper, head.edge, { face: 'text-bold', sizeMm: 4.6 })
  paragraph(paper, head.leave, { face: 'text-bold', sizeMm: 4.6 })
  gap(paper, 2)
  headDrawings(paper, head.drawing)
  twoColumns(paper, [...listBlock('What comes with it', head.withIt), ...listBlock('Cautions', data.cautions)])
  asMeasured(paper, head)
}

/** The vendor's own figures, a line a head: what was marked on it is rubbed off on the way. */
function asMeasured(paper: Paper, { drawing }: OutsideSheetHead): void {
  if (drawing.cutKind === 'none') return
  need(paper, 12)
  gap(paper, 5)
  paragraph(paper, 'Cut as measured by you:   exhaust edge ________________   intake edge ________________')
}

function signatures(paper: Paper): void {
  need(paper, 16)
  gap(paper, 4)
  paragraph(paper, 'Received by ______________________________   date ______________')
}
