import { finishPaper, gap, heading, need, paragraph, startPaper, within, type Paper } from './layout'
import type { MoneyPaperData } from './money-paper-data'
import type { PrintSetting } from './print-setting'
import { shopAndTitle } from './shop-and-title'
import { table, tableHeight } from './table'

export type { MoneyPaperData } from './money-paper-data'

/** An invoice, a credit note or a receipt: shop and title block, what it is for, and the sums one under the other. */
export async function moneyPaper(data: MoneyPaperData, setting: PrintSetting): Promise<Uint8Array> {
  const paper = startPaper({ title: data.title, shopName: data.shop.name, language: data.language, setting })
  shopAndTitle(paper, data)
  if (data.lead !== '') {
    paragraph(paper, data.lead, { face: 'text-bold', sizeMm: 4.2 })
    gap(paper, 2)
  }
  if (data.lines.length > 0) {
    lines(paper, data.lines)
    gap(paper, 3)
  }
  sums(paper, data)
  return finishPaper(paper)
}

const lineColumns = [
  { of: 'text', label: 'What', share: 4.4 },
  { of: 'quantity', label: 'Quantity', share: 1, align: 'end' },
  { of: 'each', label: 'Each', share: 1.4, align: 'end' },
  { of: 'tax', label: 'Tax', share: 2, align: 'end' },
  { of: 'amount', label: 'Amount', share: 1.5, align: 'end' },
] as const

/** A column that no line has something in, as a credit note's quantity, is left out. */
function lines(paper: Paper, all: MoneyPaperData['lines']): void {
  const columns = lineColumns.filter(({ of }) => all.some((line) => line[of] !== ''))
  const rows = all.map((line) => columns.map(({ of }) => line[of]))
  table(paper, columns, rows, { sizeMm: bodyMm })
}

const bodyMm = 3.6
/** Room that the sums have, at the right under the amounts: a label and its amount are read as one. */
const sumsShare = 0.58

/** The sums stay together. Under lines they need no title. */
function sums(paper: Paper, data: MoneyPaperData): void {
  const columns = [
    { label: '', share: 3.4 },
    { label: '', share: 1.3, align: 'end' },
  ] as const
  const widthMm = (paper.right - paper.left) * sumsShare
  const rows = data.sums.map(({ label, amount }) => [label, amount])
  need(paper, tableHeight(columns, rows, widthMm, bodyMm) + 12)
  const strong = data.sums.flatMap((sum, place) => (sum.strong ? [place] : []))
  within(paper, paper.right - widthMm, paper.right, (part) => {
    if (data.lines.length === 0) heading(part, 'Account')
    table(part, columns, rows, { boldRows: new Set(strong), sizeMm: bodyMm })
  })
}
