import type { HeadDrawing } from '@/lib/core/spec/head-drawing'
import type { SpecFlow, SpecFlowRow, SpecSheetData } from '@/lib/core/spec/spec-sheet'
import type { StepState } from '@/lib/core/route/types'
import type { JobSheetData, JobSheetHead, JobSheetStep } from '@/lib/pdf/job-sheet'
import type { OutsideSheetData } from '@/lib/pdf/outside-sheet'
import type { PrintSetting } from '@/lib/pdf/print-setting'
import type { TagLabelData } from '@/lib/pdf/tag-label'

/** Invented papers, as a full job would fill them. */
export const setting: PrintSetting = {
  paper: 'letter',
  printedAt: '3 Mar 2026, 14:05',
  now: new Date('2026-03-03T13:05:00Z'),
}

export const shop = { name: 'Millrace Head Works', lines: ['14 Weir Lane, Eastmere', '555 0142'] }

const bolt = (across: number, along: number, long: boolean, slotted: boolean) => ({
  across,
  along,
  long,
  slotted,
})

export const head: HeadDrawing = {
  chambers: 4,
  cutKind: 'angle-flat',
  deepEdge: 'exhaust',
  edgeDepths: { intake: '0.020 in', exhaust: '0.083 in' },
  cornerReadings: {
    'intake-1': '4.4921',
    'exhaust-1': '4.4294',
    'intake-2': '4.4918',
    'exhaust-2': '4.4290',
  },
  chamberReadings: ['59.9', '60.2', '60.0', '60.3'],
  bolts: [0.02, 0.26, 0.5, 0.74, 0.98].flatMap((along) => [
    bolt(0.07, along, false, false),
    bolt(0.91, along, true, true),
  ]),
  slotToward: 'exhaust',
}

const cautions = [
  'The piston-to-valve loss is computed, not measured: check the clearance at assembly.',
  'Deck thickness, gasket choice and torque follow the head, gasket and engine makers’ instructions.',
]

const row = (lift: string, before: number | null, after: number | null, note = ''): SpecFlowRow => ({
  lift,
  before: before?.toFixed(1) ?? null,
  after: after?.toFixed(1) ?? null,
  diffCfm: before === null || after === null ? null : `+${(after - before).toFixed(1)}`,
  diffPercent: before === null || after === null ? null : `+${(((after - before) / before) * 100).toFixed(1)}`,
  note,
})

export function flow(port: 'intake' | 'exhaust', share: number): SpecFlow {
  const flows = [64.2, 131.8, 190.4, 233.9, 251.2, 252.6].map((cfm) => cfm * share)
  const before = flows.map((flowCfm, i) => ({ liftIn: (i + 1) / 10, flowCfm }))
  const after = flows.map((flowCfm, i) => ({ liftIn: (i + 1) / 10, flowCfm: flowCfm * (1.01 + i / 200) }))
  const lost = { liftIn: 0.7, flowCfm: null }
  return {
    port,
    title: port === 'intake' ? 'Intake, chamber 2' : 'Exhaust, chamber 2',
    beforePoints: [...before, lost],
    afterPoints: [...after, lost],
    rows: [
      ...before.map((point, i) =>
        row(
          `${point.liftIn.toFixed(3)} in`,
          point.flowCfm,
          after[i]?.flowCfm ?? null,
          i < 3 ? 'within the bench’s repeatability' : '',
        ),
      ),
      row('0.700 in', null, null, 'not taken: retainer meets the seal'),
    ],
    means: [row('mean, low third', 98 * share, 99.4 * share), row('mean, whole', 190 * share, 193.8 * share)],
    beforeConditions: '28 inH₂O, bore fixture 4.125 in, valve 2.020 in, radius plate, no exhaust pipe, leak 1.2 cfm',
    afterConditions: '28 inH₂O, bore fixture 4.125 in, valve 2.020 in, radius plate, no exhaust pipe, leak 1.0 cfm',
    notLike: [],
  }
}

export const spec: SpecSheetData = {
  shape: 1,
  language: 'en',
  shop,
  revision: 1,
  revisionReason: '',
  outcome: 'released',
  releasedBy: 'Ines Varga',
  releasedAt: '3 Mar 2026, 13:50',
  jobNumber: '26-0117',
  customer: 'Tomasz Brandt',
  engine: '5.8 l V8, 90°, bore 4.030 in, stroke 3.480 in',
  tag: 'T-0412',
  casting: 'Harrow 210, opened chamber',
  marks: 'stamped H2, casting 7741-B',
  side: 'left bank, marked end forward',
  pairTags: ['T-0413'],
  asked: ['Chambers to 60 cc', 'Angle cut allowed, no more than 1°', 'Flow before and after'],
  done: [
    'Angle cut outside, flat cut here to size',
    'Bolt seats squared, outer holes slotted',
    'Seats touched up, three angles',
    'Flow run before and after',
  ],
  notDone: [],
  headline: [
    { label: 'Chambers, mean', value: '60.1', unit: 'cc', note: 'asked: 60.0 cc' },
    { label: 'Compression', value: '11.2', unit: ': 1', note: 'was 10.4' },
    { label: 'Deck, exhaust edge', value: '0.083', unit: 'in', note: 'as measured' },
    { label: 'Peak intake flow', value: '258', unit: 'cfm', note: 'at 0.600 in, 28 inH₂O' },
  ],
  drawing: head,
  chambers: {
    rows: ['64.2', '64.6', '64.4', '64.7'].map((beforeCc, i) => ({
      chamber: String(i + 1),
      beforeCc,
      afterCc: head.chamberReadings[i] ?? null,
      remark: '',
    })),
    meanBeforeCc: '64.5',
    meanAfterCc: '60.1',
    spreadBeforeCc: '0.5',
    spreadAfterCc: '0.4',
    target: '60.0 cc, each within 0.5 cc',
    beforeWith: 'customer’s valves, plug B7 flush',
    afterWith: 'customer’s valves, plug B7 flush',
    picture: {
      beforeCc: [64.2, 64.6, 64.4, 64.7],
      afterCc: [59.9, 60.2, 60, 60.3],
      target: { cc: 60, toleranceCc: 0.5 },
    },
  },
  cuts: [
    {
      what: 'Angle cut, deep at the exhaust edge',
      planned: '0.063 in at the edge',
      measured: '0.0627 in, 0.52°',
      how: 'four corners, gauged on the new deck',
      by: 'Northgate Grinding, order 26-014',
    },
    { what: 'Flat cut', planned: '0.020 in', measured: '0.0200 in', how: 'from touch-off', by: 'in house' },
  ],
  removedSinceNew: '0.083 in at the exhaust edge, all visits',
  compression: { before: '10.4 : 1', after: '11.2 : 1', needs: '' },
  groups: [
    {
      title: 'Valves and seats',
      lines: [
        { label: 'Seat width, intake', value: '0.045 in', wanted: { label: 'wanted', value: '0.0470 in' } },
        { label: 'Seat width, exhaust', value: '0.065 in' },
        { label: 'Largest usable lift', value: '0.640 in: retainer meets the seal' },
      ],
    },
    {
      title: 'Deck',
      lines: [{ label: 'Straightness across', value: '0.001 in', wanted: { label: 'limit', value: '0.0025 in' } }],
    },
  ],
  flow: [flow('intake', 1), flow('exhaust', 0.72)],
  waivers: [
    {
      what: 'Surface finish not measured',
      reason: 'comparator away for checking',
      by: 'Ines Varga',
      at: '3 Mar 2026',
    },
  ],
  declined: [{ what: 'Bronze guides', how: 'by telephone, 24 Feb 2026' }],
  cutterMarks: 'Cutter marks by the exhaust inserts lie outside the sealing area.',
  cautions,
  notes: ['Comes with its own head bolts, cleaned.'],
}

const labels: readonly (readonly [string, string, StepState])[] = [
  ['Check in', 'front desk', 'done'],
  ['Strip and wash', 'wash', 'done'],
  ['Crack check', 'wash', 'done'],
  ['Measure thickness', 'measuring bench', 'done'],
  ['Measure chambers', 'measuring bench', 'done'],
  ['Seat check before', 'measuring bench', 'done'],
  ['Flow before', 'flow bench', 'waived'],
  ['Angle cut', 'outside', 'started'],
  ['Arrival check', 'front desk', 'to do'],
  ['Arrival measurements', 'measuring bench', 'to do'],
  ['Flat cut', 'deck mill', 'to do'],
  ['Deburr and chamfer', 'deck mill', 'to do'],
  ['Intake side', 'intake mill', 'to do'],
  ['Square the bolt seats', 'bolt bench', 'to do'],
  ['Bolt fit', 'bolt bench', 'to do'],
  ['Seat check after cut', 'seat machine', 'do again'],
  ['Measure finished', 'measuring bench', 'to do'],
  ['Piston-to-valve check', 'measuring bench', 'to do'],
  ['Final wash', 'wash', 'to do'],
  ['Oil, bag, wrap', 'assembly', 'to do'],
  ['Final inspection', 'measuring bench', 'to do'],
  ['Hand over', 'front desk', 'to do'],
]

const owes = (label: string): JobSheetStep['owes'] => {
  const points = (...names: string[]) => names.map((name) => ({ group: '', label: name, value: null }))
  const none = { choices: [] }
  if (label === 'Measure chambers') {
    const values = ['64.2', '64.6', '64.4', '64.7']
    return [
      {
        label: 'Before',
        unit: 'cc',
        points: values.map((value, i) => ({ group: '', label: String(i + 1), value })),
        ...none,
      },
    ]
  }
  if (label === 'Measure finished') {
    return [
      { label: 'Finished', unit: 'cc', points: points('1', '2', '3', '4'), ...none },
      {
        label: 'Thickness',
        unit: 'in',
        points: ['intake end', 'exhaust end'].flatMap((group) => [
          { group, label: '1', value: null },
          { group, label: '2', value: null },
        ]),
        ...none,
      },
      { label: 'Cutter marks by the inserts', unit: '', points: points(''), choices: ['none', 'seen'] },
    ]
  }
  return label === 'Flat cut' ? [{ label: 'Total depth', unit: 'in', points: points(''), ...none }] : []
}

const wanted: Readonly<Record<string, string>> = {
  'Bolt fit, slot where needed':
    'Slot, holes L1, L2: 17.3 thou, at the top, toward the intake edge; No slot: holes S1, S2',
}

export const jobHead: JobSheetHead = {
  tag: 'T-0412',
  revision: 31,
  qrText: 'http://192.168.1.20:3000/t/T-0412',
  casting: 'Harrow 210, opened chamber',
  marks: 'stamped H2, casting 7741-B',
  side: 'left bank, marked end forward',
  place: 'rack C, shelf 3',
  pairTags: ['T-0413'],
  cameWith: 'valves, springs, ten head bolts in a bag',
  ordered: ['Chambers to 60 cc, angle cut allowed, no more than 1°', 'Flow after', 'Touch up the seats'],
  stop: ['STOP. On hold: The dowel hole on end 2 is torn. Not decided yet: ask the owner.'],
  waiting: ['Assembly heights waits for 8 springs'],
  findings: ['Spring seat 3 is worn: asked, no answer yet, do not start'],
  planTitle: 'Plan: angle cut and flat cut',
  planFigures: [
    {
      label: 'Exhaust edge, in all',
      value: '0.083',
      unit: 'in',
      note: 'angle 0.063 outside, flat 0.020 here',
    },
    { label: 'Intake edge', value: '0.020', unit: 'in', note: '' },
    { label: 'Target', value: '60.0', unit: 'cc', note: 'each within 0.5 cc' },
  ],
  planNotes: ['The seat work to come adds about 0.5 cc: the cut aims at 59.5 cc.'],
  drawing: { ...head, chamberReadings: ['64.2', '64.6', '64.4', '64.7'] },
  graduations: labels.map(([label, , state]) => ({
    label,
    state,
    owesReading: owes(label).length > 0,
    outside: label === 'Angle cut',
    held: label === 'Flat cut',
  })),
  steps: labels.map(([label, station, state]) => ({
    label,
    station,
    state,
    outside: label === 'Angle cut' ? 'at Northgate Grinding, order 26-014, promised 9 Mar' : '',
    note: state === 'do again' ? 'the angle cut undid it' : state === 'waived' ? 'customer did not want it' : '',
    wanted: wanted[label] ?? '',
    owes: owes(label),
  })),
  cautions,
  declined: ['Guide 3 exhaust loose, declined by telephone, 27 Feb 2026'],
  waivers: ['Flow before: customer did not want it (Ines Varga, 26 Feb 2026)'],
}

export const job: JobSheetData = {
  language: 'en',
  shop,
  jobNumber: '26-0117',
  customer: 'Tomasz Brandt',
  phone: '555 0199',
  promised: '20 Mar 2026',
  urgency: 'race on the 28th',
  engine: '5.8 l V8, 90°, bore 4.030 in, stroke 3.480 in',
  notes: 'Call before any weld.',
  addressWarning: '',
  heads: [jobHead],
}

export const outside: OutsideSheetData = {
  language: 'en',
  shop,
  orderNumber: '26-014',
  vendor: { name: 'Northgate Grinding', lines: ['Unit 4, Quarry Road, Eastmere'] },
  sentOn: '27 Feb 2026',
  promised: '9 Mar 2026',
  contact: 'Ask for Ines Varga',
  heads: ['T-0412', 'T-0413'].map((tag) => ({
    tag,
    qrText: `http://192.168.1.20:3000/t/${tag}`,
    casting: 'Harrow 210',
    marks: 'stamped H2, casting 7741-B',
    work: ['Angle cut: 0.063 in at the exhaust edge, running out to nothing at the intake edge'],
    figures: [
      { label: 'Exhaust edge', value: '0.063', unit: 'in', note: 'deep edge' },
      { label: 'Intake edge', value: '0.000', unit: 'in', note: '' },
    ],
    edge: 'The exhaust edge is the deep edge.',
    redo: '',
    corners: [
      { corner: 'intake end 1', nowIn: '4.5010', wantedIn: '4.5008' },
      { corner: 'exhaust end 1', nowIn: '4.5020', wantedIn: '4.4388' },
      { corner: 'intake end 2', nowIn: '4.5000', wantedIn: '4.4998' },
      { corner: 'exhaust end 2', nowIn: '4.5010', wantedIn: '4.4378' },
    ],
    wanted: ['Each depth within 0.0020 in', 'End 1 is the marked end: the tag hangs there'],
    leave: 'Cut exactly these figures, no more. We take another 0.020 in flat here afterwards.',
    drawing: {
      ...head,
      cutKind: 'angle',
      edgeDepths: { intake: null, exhaust: '0.063 in' },
      chamberReadings: [],
    },
    withIt: ['No valves, no studs', 'Dowels are in'],
  })),
  checks: ['Thickness at the four corners', 'Straightness of the new deck', 'Marks by the inserts'],
  notes: '',
  cautions: ['Do not cut deeper than the figure.'],
  addressWarning: '',
}

export const label: TagLabelData = {
  language: 'en',
  tag: 'T-0412',
  qrText: 'http://192.168.1.20:3000/t/T-0412',
  shopName: shop.name,
  jobNumber: '26-0117',
  casting: 'Harrow 210',
  side: 'left bank',
}
