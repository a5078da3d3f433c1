import { finishPaper, gap, heading, need, paragraph, startPaper, type Paper } from './layout'
import type { MoneyPaperData } from './money-paper-data'
import type { PrintSetting } from './print-setting'
import { shopAndTitle } from './shop-and-title'
import { table, tableHeight } from './table'

export type { MoneyPaperData } from './money-paper-data'

/** An invoice, a credit note or a receipt: shop and title block, what it is for, and the sums one under the other. */
export async function moneyPaper(data: MoneyPaperData, setting: PrintSetting): Promise<Uint8Array> {
  const paper = await startPaper({ title: data.title, shopName: data.shop.name, language: data.language, setting })
  shopAndTitle(paper, data)
  if (data.lead !== '') {
    paragraph(paper, data.lead, { face: 'text-bold', sizeMm: 4.2 })
    gap(paper, 2)
  }
  if (data.lines.length > 0) {
    table(
      paper,
      lineColumns,
      data.lines.map(({ text, quantity, each, tax, amount }) => [text, quantity, each, tax, amount]),
    )
    gap(paper, 2)
  }
  sums(paper, data)
  return finishPaper(paper)
}

const lineColumns = [
  { label: 'What', share: 4.4 },
  { label: 'Quantity', share: 1, align: 'end' },
  { label: 'Each', share: 1.4, align: 'end' },
  { label: 'Tax', share: 2, align: 'end' },
  { label: 'Amount', share: 1.5, align: 'end' },
] as const

/** The sums stay together. */
function sums(paper: Paper, data: MoneyPaperData): void {
  const columns = [
    { label: '', share: 8.3, align: 'end' },
    { label: '', share: 2, align: 'end' },
  ] as const
  const rows = data.sums.map(({ label, amount }) => [label, amount])
  need(paper, tableHeight(columns, rows, paper.right - paper.left) + 12)
  heading(paper, 'Account')
  const strong = data.sums.flatMap((sum, place) => (sum.strong ? [place] : []))
  table(paper, columns, rows, { boldRows: new Set(strong) })
}
