import type { EstimateData } from '@/lib/pdf/estimate'
import type { ClaimTicketData } from '@/lib/pdf/claim-ticket'
import type { HandOverSlipData } from '@/lib/pdf/hand-over-slip'
import { shop } from './sample-papers'

/** Invented papers of the desk: what goes out before a job, and what goes home with the heads. */
export const estimate: EstimateData = {
  language: 'en',
  shop,
  number: 'E-0031',
  forWhom: 'Tomasz Brandt',
  on: '3 Mar 2026',
  by: 'Ines Varga',
  casting: 'Harrow 210',
  chamberShape: 'closed',
  note: 'Open on Thursday evenings.',
  answer: {
    kind: 'flat',
    title: 'Flat cut of 0.024 in to 60 cc',
    start: 'The head at hand, 64 cc',
    effort: 'One pass here',
    lines: [{ label: 'Depth', value: '0.024 in', note: '' }],
    groups: [
      { title: 'Valves', lines: [{ label: 'Piston to valve', value: '0.024 in less', note: 'estimate' }] },
      { title: 'Intake', lines: [{ label: 'Off the intake side', value: '0.030 in', note: '' }] },
    ],
    unknown: [{ label: 'Compression', needs: ['stroke'] }],
    steps: [{ label: 'Flat cut', outside: false }],
    days: 3,
    priceMinor: 18_000,
    unpriced: [],
    cautions: [{ code: 'as-said', words: 'Check the clearance at assembly.' }],
    others: [],
    drawing: { casting: {}, deepEdge: 'exhaust', cut: { flatIn: 0.024, angleIn: 0, angleDeg: null } },
  },
  price: '$180.00',
}

export const handOverSlipOf: HandOverSlipData = {
  language: 'en',
  shop,
  jobNumber: '26-0117',
  revision: 4,
  customer: 'Tomasz Brandt',
  engine: '5.8 l V8',
  heads: [
    {
      tag: 'T-0412',
      casting: 'Harrow 210',
      side: 'left bank',
      takenBy: 'Tomasz Brandt',
      on: '4 Mar 2026',
      partsBack: 'old springs',
      note: '',
    },
  ],
  stillHere: ['T-0413'],
  lines: [{ text: 'Flat cut', quantity: '2', each: '$90.00', amount: '$180.00' }],
  net: '$180.00',
  tax: '$14.85',
  total: '$194.85',
  payments: [{ what: 'Deposit, 24 Feb 2026, cash', amount: '-$50.00' }],
  balanceLabel: 'Still to pay',
  balance: '$144.85',
}

export const claimTicketOf: ClaimTicketData = {
  language: 'en',
  shop,
  jobNumber: '26-0117',
  customer: 'Tomasz Brandt',
  on: '3 Mar 2026',
  promise: 'Fri, Mar 20',
  heads: [{ tag: 'T-0412', casting: 'Harrow 210', side: 'left bank', cameWith: 'valves in a tray' }],
  total: '$194.85',
  paid: '$50.00',
  balanceLabel: 'Still to pay',
  balance: '$144.85',
}
