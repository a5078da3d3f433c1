import { describe, expect, it } from 'vitest'
import type { StepState } from '@/lib/core/route/types'
import { turnaround } from '@/lib/core/shop/turnaround'
import { chamberBars } from '@/lib/drawing/chamber-bars'
import { chamberTrendDrawing } from '@/lib/drawing/chamber-trend'
import { cutSection } from '@/lib/drawing/cut-section'
import { flowCurves, flowRunCurves } from '@/lib/drawing/flow-curves'
import { headPlan } from '@/lib/drawing/head-plan'
import { headScale } from '@/lib/drawing/head-scale'
import { headSection } from '@/lib/drawing/head-section'
import type { Drawing, Mark } from '@/lib/drawing/marks'
import { outNow } from '@/lib/drawing/out-now'
import { openingOutline } from '@/lib/drawing/opening-outline'
import { tagPlate } from '@/lib/drawing/tag-plate'
import { turnaroundStrip } from '@/lib/drawing/turnaround-strip'
import { qrDrawing } from '@/lib/pdf/qr'
import { flow, head, spec } from '@/tests/pdf/sample-papers'
import { differences, marksOnPaper, marksOnScreen, onPaper, type Placed, type Seen } from './seen-marks'

const states: readonly StepState[] = ['done', 'started', 'ready', 'do again', 'waived', 'not needed', 'to do']
const route = Array.from({ length: 21 }, (_, i) => ({
  label: `Step ${i + 1}, Größe & < ψ`,
  state: states[i % states.length] ?? 'done',
  owesReading: i % 2 === 0,
  outside: i % 5 === 0,
  held: i === 6,
}))

const stage = (label: string, ccs: readonly (number | null)[], fitted: string) => ({
  label,
  jobNumber: label === 'as came' ? '26-0007' : '26-0009',
  ccs,
  texts: ccs.map((cc) => cc?.toFixed(1) ?? null),
  fitted,
  target: label === 'finished' ? { cc: 60, toleranceCc: 0.5 } : null,
})

const strip = (daysTaken: readonly number[], widthMm?: number) =>
  turnaroundStrip({ vendor: 'Tarn Grinding', daysTaken, turnaround: turnaround(daysTaken), widthMm })

const out = {
  tags: ['T-0404', 'T-0405'],
  vendor: 'Tarn Grinding',
  days: 12,
  promisedDays: 9,
  usual: turnaround([3, 5, 9]),
}
const outOrders = [out, { ...out, tags: ['T-0410'], days: 6, promisedDays: null }, { ...out, days: 0, usual: null }]

const section = { chamberShape: 'open', deepEdge: 'exhaust' } as const
const wedge = {
  milledWidthIn: 6,
  openingAreaIn2: 10.1706,
  openingCentreIn: 3.81,
  nominalCc: 64,
  intakeFaceDeg: 10,
  intakeValveIn: 2.055,
  intakeValveAngleDeg: 22,
  intakeValveXIn: 3.05,
  intakeValveZIn: 0.52,
  intakeSealingIn: 2.045,
  exhaustValveIn: 1.6,
  exhaustValveAngleDeg: 22,
  exhaustValveXIn: 3.3,
  exhaustValveZIn: 0.47,
  exhaustSeatDepthIn: 0.14,
}

const chambers = spec.chambers ?? expect.unreachable()
const intake = flow('intake', 1)
const curves = { title: 'Intake', widthMm: 90, heightMm: 50 }
const run = (name: string) => ({ name, points: intake.afterPoints })

const drawings: readonly (readonly [string, Drawing])[] = [
  ['plan', headPlan(head)],
  ['plan, deep at the intake', headPlan({ ...head, deepEdge: 'intake', slotToward: 'intake' }, 120)],
  [
    'plan with slots to come and holes named',
    headPlan(
      {
        ...head,
        slotsAre: 'needed',
        slotNote: '2 to 4',
        bolts: head.bolts.map((bolt, i) => ({ ...bolt, label: String(i + 1) })),
      },
      110,
    ),
  ],
  [
    'plan of twelve without a reading',
    headPlan({ ...head, chambers: 12, chamberReadings: [], bolts: [], cutKind: 'none', deepEdge: null }),
  ],
  [
    'plan of a flat deck',
    headPlan({
      ...head,
      flatDeck: { valves: [{ across: 0.4, widthShare: 0.17 }], injectorAcross: 0.5 },
    }),
  ],
  ['section', headSection(head)],
  ['section of a flat cut', headSection({ ...head, cutKind: 'flat', deepEdge: null })],
  [
    'section to scale',
    cutSection({ ...section, casting: wedge, cut: { flatIn: 0.02, angleIn: 0.063, angleDeg: null } }),
  ],
  [
    'section to scale, narrow, of a record with nothing',
    cutSection({ ...section, narrow: true, casting: {}, cut: { flatIn: 0.02, angleIn: 0, angleDeg: null } }),
  ],
  ['scale', headScale(route, { widthMm: 150, forHand: false })],
  ['scale for hand', headScale(route, { widthMm: 180, forHand: true })],
  ['empty scale', headScale([], { widthMm: 150, forHand: true })],
  ['curves', flowCurves(intake.beforePoints, intake.afterPoints, curves)],
  ['curves of one run', flowCurves([], intake.afterPoints, curves)],
  ['curves not like for like', flowCurves(intake.beforePoints, intake.afterPoints, { ...curves, notLike: true })],
  ['no curves', flowCurves([], [], curves)],
  ['curves of five runs', flowRunCurves(['as came', 'ported', 'cut', 'seats', 'again'].map(run), curves)],
  [
    'chambers over the visits',
    chamberTrendDrawing(
      [
        stage('as came', [64.2, 64], ''),
        stage('thickness', [null, 62], 'own'),
        stage('finished', [60.4, 60], 'shop’s'),
      ],
      { title: 'Chambers, cc', widthMm: 100 },
    ),
  ],
  ['chambers before and after', chamberBars(chambers, { widthMm: 116, heightMm: 38 })],
  ['chambers not measured alike', chamberBars({ ...chambers, beforeWith: 'own' }, { widthMm: 90, heightMm: 40 })],
  [
    'chambers of which nobody noted the valves',
    chamberBars({ ...chambers, beforeWith: '', afterWith: '' }, { widthMm: 90, heightMm: 40 }),
  ],
  ['turnaround', strip([3, 5, 5, 9, 14])],
  ['turnaround on a telephone', strip([3, 5, 5, 9, 14], 84)],
  ['turnaround of nobody', strip([])],
  ['out now', outNow(outOrders, { title: 'Out now', withVendor: true })],
  ['out now on a telephone', outNow(outOrders, { title: 'Out now', withVendor: false, widthMm: 84 })],
  ['nothing out', outNow([], { title: 'Out now', withVendor: false })],
  ['tag', tagPlate('T-0412')],
  ['long tag', tagPlate('T-104127')],
  [
    'opening',
    openingOutline({
      points: [
        { xIn: 2, yIn: 1 },
        { xIn: 5, yIn: 1 },
        { xIn: 5, yIn: 3 },
        { xIn: 2, yIn: 3 },
      ],
      areaIn2: 6,
      centreIn: 3.5,
      milledWidthIn: 7,
      deepEdge: 'intake',
    }),
  ],
  ['QR code', qrDrawing('https://shop.example/t/T-0412', 27)],
]

const placed: Placed = { xMm: 12, yMm: 17, scale: 1 }
/** Papers draw at other scales too; a difference is then told in millimetres of the drawing. */
const smaller: Placed = { xMm: 31.5, yMm: 8, scale: 0.6 }

const asOnPaper = async (drawing: Drawing, screen: readonly Seen[], where: Placed) =>
  marksOnPaper(await onPaper(drawing, where), screen, where)

const withinMm = 0.1

describe('the same marks on the screen and on paper, in the same order, within a tenth of a millimetre', () => {
  it.each(drawings)('%s', async (_, drawing) => {
    const screen = marksOnScreen(drawing)
    expect(screen).toHaveLength(drawing.marks.length)
    expect(differences(screen, await asOnPaper(drawing, screen, placed), withinMm)).toEqual([])
    expect(differences(screen, await asOnPaper(drawing, screen, smaller), withinMm)).toEqual([])
  })
})

describe('what the comparison would find', () => {
  const drawing = headPlan(head)
  const shift = (d: string, byMm: number): string => d.replace(/^M(-?[\d.]+)/, (_, x: string) => `M${Number(x) + byMm}`)
  const moved = (mark: Mark, byMm: number): Mark =>
    mark.kind === 'text' ? { ...mark, x: mark.x + byMm } : { ...mark, d: shift(mark.d, byMm) }
  const changed = (change: (marks: Mark[]) => Mark[]): Drawing => ({ ...drawing, marks: change([...drawing.marks]) })
  const screen = marksOnScreen(drawing)
  const found = async (other: Drawing) => differences(screen, await asOnPaper(other, screen, placed), withinMm)

  it('any one mark moved by a fifth of a millimetre, and none moved by a twentieth', async () => {
    for (const [place, mark] of drawing.marks.entries()) {
      const other = changed((marks) => marks.with(place, moved(mark, 0.2)))
      expect(await found(other)).toEqual([expect.stringMatching(`^mark ${place}, .*is off by 0\\.(199|2\\d\\d)`)])
      expect(await found(changed((marks) => marks.with(place, moved(mark, 0.05))))).toEqual([])
    }
  })

  it('marks that changed places, a mark left out, other words', async () => {
    expect(await found(changed((marks) => marks.toSpliced(1, 2, ...marks.slice(1, 3).reverse())))).not.toEqual([])
    expect(await found(changed((marks) => marks.slice(1)))).not.toEqual([])
    expect(
      await found(
        changed((marks) =>
          marks.map((mark) => (mark.kind === 'text' && mark.text === '1' ? { ...mark, text: '7' } : mark)),
        ),
      ),
    ).not.toEqual([])
  })

  it('a thicker line, a line without its dashes, words held otherwise or larger', async () => {
    const paths = (change: (mark: Extract<Mark, { kind: 'path' }>) => Mark) =>
      found(changed((marks) => marks.map((mark) => (mark.kind === 'path' ? change(mark) : mark))))
    const texts = (change: (mark: Extract<Mark, { kind: 'text' }>) => Mark) =>
      found(changed((marks) => marks.map((mark) => (mark.kind === 'text' ? change(mark) : mark))))
    expect(
      await paths((mark) => ({
        ...mark,
        stroke: mark.stroke && { ...mark.stroke, widthMm: mark.stroke.widthMm + 0.2 },
      })),
    ).not.toEqual([])
    expect(await paths((mark) => ({ ...mark, stroke: mark.stroke && { ...mark.stroke, dashMm: [3, 1] } }))).not.toEqual(
      [],
    )
    expect(await paths((mark) => ({ ...mark, fill: null }))).not.toEqual([])
    expect(await texts((mark) => ({ ...mark, sizeMm: mark.sizeMm + 0.2 }))).not.toEqual([])
    expect(await texts((mark) => ({ ...mark, turnDeg: 10 }))).not.toEqual([])
    expect(await texts((mark) => ({ ...mark, anchor: 'end' }))).not.toEqual([])
  })
})
