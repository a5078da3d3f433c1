import type { ClaimTicketData } from './claim-ticket-data'
import { drawing, finishPaper, gap, heading, paragraph, startPaper, type Paper } from './layout'
import type { PrintSetting } from './print-setting'
import { qrDrawing } from './qr'
import { shopAndTitle } from './shop-and-title'
import { table } from './table'

export type { ClaimTicketData } from './claim-ticket-data'

const qrMm = 32

/** What the customer takes along: which heads the shop has, by when, and what was paid. Its QR code is the job's number. */
export async function claimTicket(data: ClaimTicketData, setting: PrintSetting): Promise<Uint8Array> {
  const paper = await startPaper({
    title: `Claim ticket, job ${data.jobNumber}`,
    shopName: data.shop.name,
    language: data.language,
    setting,
  })
  shopAndTitle(paper, {
    shop: data.shop,
    title: `Claim ticket, job ${data.jobNumber}`,
    block: [
      ['For', data.customer],
      ['Date', data.on],
      ['Promised', data.promise || 'not promised yet: we will call'],
    ],
  })
  heading(paper, 'Left with us')
  if (data.heads.length === 0) paragraph(paper, 'No head yet.')
  table(
    paper,
    headColumns,
    data.heads.map(({ tag, casting, side, cameWith }) => [
      tag,
      casting,
      side || 'not said',
      cameWith || 'nothing else',
    ]),
  )
  account(paper, data)
  gap(paper, 4)
  drawing(paper, qrDrawing(data.jobNumber, qrMm))
  paragraph(paper, 'Bring this ticket when you pick up the heads.')
  return finishPaper(paper)
}

const headColumns = [
  { label: 'Head', share: 1.2, face: 'text-bold' },
  { label: 'Casting', share: 2 },
  { label: 'Bank or side', share: 1.2 },
  { label: 'Came with', share: 2.6 },
] as const

const sumColumns = [
  { label: '', share: 5 },
  { label: '', share: 2, align: 'end' },
] as const

function account(paper: Paper, { total, paid, balanceLabel, balance }: ClaimTicketData): void {
  heading(paper, 'Account')
  const rows = [
    ['Total with tax', total],
    ['Paid', paid],
    [balanceLabel, balance],
  ]
  table(paper, sumColumns, rows, { boldRows: new Set([2]) })
}
