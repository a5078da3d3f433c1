import { finishPaper, gap, heading, need, paragraph, startPaper, type Paper } from './layout'
import type { PrintSetting } from './print-setting'
import type { HandOverSlipData } from './hand-over-slip-data'
import { shopAndTitle } from './shop-and-title'
import { table, tableHeight } from './table'

export type { HandOverSlipData } from './hand-over-slip-data'

/** What goes home with the heads: who took which, what came back, what it cost and what was paid. */
export async function handOverSlip(data: HandOverSlipData, setting: PrintSetting): Promise<Uint8Array> {
  const paper = startPaper({
    title: `Hand-over slip, job ${data.jobNumber}`,
    shopName: data.shop.name,
    language: data.language,
    setting,
  })
  top(paper, data)
  heading(paper, 'Handed over')
  table(
    paper,
    headColumns,
    data.heads.map(({ tag, casting, side, takenBy, on, partsBack, note }) => [
      tag,
      casting,
      side || 'not said',
      [takenBy, on].filter((part) => part !== '').join(', '),
      [partsBack || 'none', note].filter((part) => part !== '').join('; '),
    ]),
  )
  if (data.stillHere.length > 0) paragraph(paper, `Still here: ${data.stillHere.join(', ')}.`)
  gap(paper, 3)
  account(paper, data)
  signature(paper)
  return finishPaper(paper)
}

const headColumns = [
  { label: 'Head', share: 1, face: 'text-bold' },
  { label: 'Casting', share: 1.7 },
  { label: 'Bank or side', share: 1.2 },
  { label: 'Taken by', share: 2.4 },
  { label: 'Parts and cores returned', share: 2.6 },
] as const

const lineColumns = [
  { label: 'What', share: 5 },
  { label: 'Quantity', share: 1, align: 'end' },
  { label: 'Each', share: 1.4, align: 'end' },
  { label: 'Amount', share: 1.5, align: 'end' },
] as const

const top = (paper: Paper, data: HandOverSlipData): void =>
  shopAndTitle(paper, {
    shop: data.shop,
    title: `Hand-over slip, job ${data.jobNumber}`,
    block: [
      ['For', data.customer],
      ['Engine', data.engine],
      ['Revision', String(data.revision)],
    ],
  })

/** Work, tax, what was paid and what is left, one under the other so that the sums can be followed. */
function account(paper: Paper, data: HandOverSlipData): void {
  heading(paper, 'Account')
  table(
    paper,
    lineColumns,
    data.lines.map(({ text, quantity, each, amount }) => [text, quantity, each, amount]),
  )
  const sum = (label: string, amount: string) => ['', '', label, amount]
  const paid = data.payments.map(({ what, amount }) => [what, '', '', amount])
  const rows = [
    sum('Net', data.net),
    sum('Tax', data.tax),
    sum('Total', data.total),
    ...paid,
    sum(data.balanceLabel, data.balance),
  ]
  const columns = lineColumns.map((column) => ({ ...column, label: '' }))
  // The sums stay together, and with the name of who received it.
  need(paper, tableHeight(columns, rows, paper.right - paper.left) + signatureMm)
  table(paper, columns, rows, { boldRows: new Set([2, rows.length - 1]) })
}

const signatureMm = 18

function signature(paper: Paper): void {
  need(paper, signatureMm)
  gap(paper, 10)
  paragraph(paper, 'Received by ______________________________   date ______________')
}
