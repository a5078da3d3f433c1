import { lower } from '@/lib/core/route/words'
import { finishPaper, gap, need, newPage, paragraph, startPaper, type Paper } from './layout'
import type { OutsideSheetData, OutsideSheetHead } from './outside-sheet-data'
import { bigFigures, facts, headDrawings, listBlock, tagHead, titledList, twoColumns } from './parts'
import type { PrintSetting } from './print-setting'
import { shopAndTitle } from './shop-and-title'
import { table } from './table'

export type { OutsideSheetData, OutsideSheetHead } from './outside-sheet-data'

/** The paper that travels to a vendor with the heads of one order: what to cut, off which edge, what to leave for us. */
export async function outsideSheet(data: OutsideSheetData, setting: PrintSetting): Promise<Uint8Array> {
  const paper = startPaper({
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
    headPart(paper, data, head, { isFirst: i === 0, isLast: i === data.heads.length - 1 })
  })
  signatures(paper)
  return finishPaper(paper)
}

const parties = (paper: Paper, data: OutsideSheetData): void =>
  shopAndTitle(paper, {
    shop: data.shop,
    contact: data.contact,
    title: `Outside order ${data.orderNumber}`,
    block: [
      ['To', data.vendor.name],
      ...data.vendor.lines.map((line) => ['', line] as const),
      ['Sent', data.sentOn],
      ['Promised back', data.promised],
      ['Heads', data.heads.map((head) => head.tag).join(', ')],
    ],
    gapMm: 2,
  })

type Place = { readonly isFirst: boolean; readonly isLast: boolean }

function headPart(paper: Paper, data: OutsideSheetData, head: OutsideSheetHead, { isFirst, isLast }: Place): void {
  tagHead(paper, {
    tag: head.tag,
    qrText: head.qrText,
    title: `Order ${data.orderNumber}`,
    lines: facts([
      ['', isFirst ? '' : [data.shop.name, data.shop.lines.at(-1) ?? ''].filter(Boolean).join(' · ')],
      ['Casting', head.casting],
      ['Marks', head.marks],
    ]),
  })
  paragraph(paper, head.redo, { face: 'text-bold', sizeMm: 4.6 })
  titledList(paper, 'What to do', head.work)
  gap(paper, 1)
  bigFigures(paper, head.figures)
  paragraph(paper, head.edge, { face: 'text-bold', sizeMm: 4.6 })
  paragraph(paper, head.leave, { face: 'text-bold', sizeMm: 4.6 })
  gap(paper, 2)
  headDrawings(paper, head.drawing)
  cornerTable(paper, head)
  twoColumns(paper, [
    ...listBlock('Wanted', [...head.wanted, ...data.cautions]),
    ...listBlock('What comes with it', head.withIt),
    ...(isLast ? listBlock('Notes', data.notes === '' ? [] : data.notes.split('\n')) : []),
  ])
  if (isLast) paragraph(paper, `We check on return: ${data.checks.map(lower).join('; ')}.`)
  asMeasured(paper, head)
}

const cornerColumns = [
  { label: 'Corner, on the deck', share: 2 },
  { label: 'thickness now, in', share: 1.4, align: 'end' as const },
  { label: 'wanted, in', share: 1.4, align: 'end' as const, face: 'text-bold' as const },
  { label: 'after your cut, in', share: 2, align: 'end' as const },
]

/** What stands at each corner, and a line for what the vendor reads there afterwards. */
function cornerTable(paper: Paper, { corners }: OutsideSheetHead): void {
  if (corners.length === 0) return
  const rows = corners.map(({ corner, nowIn, wantedIn }) => [corner, nowIn, wantedIn, '________________'])
  table(paper, cornerColumns, rows, { sizeMm: 3.1 })
  gap(paper, 1)
}

/** The vendor's own figures, a line a head: what was marked on it is rubbed off on the way. */
function asMeasured(paper: Paper, { drawing, corners }: OutsideSheetHead): void {
  if (drawing.cutKind === 'none' || corners.length > 0) return
  need(paper, 12)
  gap(paper, 5)
  paragraph(paper, 'Cut as measured by you:   exhaust edge ________________   intake edge ________________')
}

function signatures(paper: Paper): void {
  need(paper, 8)
  gap(paper, 3)
  paragraph(paper, 'Received by ______________________________   date ______________')
}
