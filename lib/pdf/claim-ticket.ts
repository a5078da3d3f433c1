import type { ClaimTicketData } from './claim-ticket-data'
import { beside, drawing, finishPaper, gap, heading, need, paragraph, startPaper, within, type Paper } from './layout'
import type { PrintSetting } from './print-setting'
import { qrDrawing } from './qr'
import { shopAndTitle } from './shop-and-title'
import { table } from './table'

export type { ClaimTicketData } from './claim-ticket-data'

const qrMm = 32

/** What the customer takes along: which heads the shop has, by when, and what was paid. Its QR code is the job's number. */
export async function claimTicket(data: ClaimTicketData, setting: PrintSetting): Promise<Uint8Array> {
  const paper = startPaper({
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
  gap(paper, 3)
  need(paper, qrMm + 14)
  beside(paper, [() => codeOfJob(paper, data), () => account(paper, data)])
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

/** The code of the job at the left edge; what to do with the ticket under it. */
function codeOfJob(paper: Paper, { jobNumber }: ClaimTicketData): void {
  within(paper, paper.left, paper.left + (paper.right - paper.left) * codeShare, (part) => {
    part.y += drawing(part, qrDrawing(jobNumber, qrMm))
    paragraph(part, 'Bring this ticket when you pick up the heads.')
  })
}

function account(paper: Paper, { total, paid, balanceLabel, balance }: ClaimTicketData): void {
  const rows = [
    ['Total with tax', total],
    ['Paid', paid],
    [balanceLabel, balance],
  ]
  within(paper, paper.left + (paper.right - paper.left) * accountShare, paper.right, (part) => {
    heading(part, 'Account')
    table(part, sumColumns, rows, { boldRows: new Set([2]) })
  })
}

/** Where the code ends and the account begins, of the width. */
const [codeShare, accountShare] = [0.4, 0.45]
