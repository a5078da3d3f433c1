import type { PlanRecord } from '../cut/plan-record'
import { shopCutOf, type CutFacts } from '../rate/shop-cut'
import type { StepId } from '../route/step-ids'
import type { RouteFacts } from '../route/types'
import { cornersFit, cornersOf, type Corners, type CornersFit } from '../straightness/corners-fit'
import { cutCheck, type CutCheckRow, type CutParts } from '../straightness/cut-check'
import type { PlaneFit } from '../straightness/plane-fit'
import { readMarks, type VendorMarks } from '../straightness/vendor-marks'
import { degrees } from '../units/degrees'

type AtStep = { readonly stepId: StepId; readonly orderId: string | null }

export type MeasuredCut = {
  readonly cut: Pick<PlaneFit, 'flatIn' | 'angleIn'> & Partial<CornersFit>
  readonly by: 'corners' | 'machine'
}

/**
 * The angle of a cut in degrees: atan(angle part / milled width).
 *
 * @param angleIn angle part at the deep edge, in inches (0–0.5)
 * @param milledWidthIn from edge to edge, in inches (1–20); null: not known, so is the angle
 *
 * Example: 0.0611 in over 7 in → 0.5°. Derived: the right triangle of width and depth.
 */
export const cutDegrees = (angleIn: number | null, milledWidthIn: number | null | undefined): number | null =>
  angleIn === null || !milledWidthIn ? null : degrees(Math.atan(angleIn / milledWidthIn))

/**
 * What was really cut by a step, in inches: by the corners, else at the finished check and the angle cut by what was read
 * at the machine.
 *
 * @param facts readings that stand, oldest first
 * @returns null before it was measured, and at steps that measure no cut
 *
 * Example: 0.020 read from touch-off at the flat cut, no corners → flat 0.020, angle part 0, by the machine.
 * Derived: `cornersFit`; else the difference of both edges of `shopCutOf`.
 */
export function cutMeasuredAt(facts: CutFacts, { stepId, orderId }: AtStep): MeasuredCut | null {
  if (stepId !== 'arrival-figures' && stepId !== 'finished' && stepId !== 'angle-cut') return null
  const { deck, readings } = facts
  if (stepId !== 'angle-cut') {
    const fit = cornersFit(deck, cornersAt(facts, 'thickness', null), cornersAt(facts, stepId, orderId))
    if (fit.ok) return { cut: fit.value, by: 'corners' }
    if (stepId === 'arrival-figures') return null
  }
  const own = stepId === 'angle-cut' ? readings.filter(({ step }) => step.stepId === stepId) : readings
  const edges = shopCutOf({ ...facts, readings: own })?.edges
  if (!edges) return null
  const angleIn = edges.deepIn - edges.shallowIn
  const angleDeg = cutDegrees(angleIn, deck.milledWidthIn)
  return { cut: { flatIn: edges.shallowIn, angleIn, ...(angleDeg === null ? {} : { angleDeg }) }, by: 'machine' }
}

const cornersAt = ({ readings }: CutFacts, stepId: StepId, orderId: string | null): Corners =>
  cornersOf(readings.filter(({ step }) => step.stepId === stepId && step.orderId === orderId))

export type WantedFacts = Pick<RouteFacts, 'orders' | 'plan'> & {
  readonly kind: PlanRecord['kind']
  readonly milledWidthIn: number | null
}

/**
 * What was wanted of the cut of a step, in inches and degrees: on arrival what the order asked for, else the plan's own
 * parts; the angle cut has no flat part.
 *
 * @returns a part is null when nothing was wanted of it; of a clean-up the flat part is, since it takes as little as makes
 *   the deck flat
 *
 * Example: plan 0.020 flat and 0.0611 at the deep edge, 7 in wide → at the angle cut 0 and 0.0611, 0.5°.
 * Derived: the plan's parts, and `cutDegrees`.
 */
export function cutWantedAt({ orders, plan, kind, milledWidthIn }: WantedFacts, at: AtStep): CutParts {
  const parts = partsWanted({ orders, plan, kind }, at)
  return { ...parts, angleDeg: cutDegrees(parts.angleIn, milledWidthIn) }
}

function partsWanted(
  { orders, plan, kind }: Omit<WantedFacts, 'milledWidthIn'>,
  { stepId, orderId }: AtStep,
): Pick<CutParts, 'flatIn' | 'angleIn'> {
  if (stepId === 'arrival-figures') {
    const order = orders.find((candidate) => candidate.orderId === orderId)
    return { flatIn: order?.flatIn ?? null, angleIn: order?.angleIn ?? null }
  }
  if (kind === 'clean-up' || !plan) return { flatIn: null, angleIn: 0 }
  return { flatIn: stepId === 'angle-cut' ? 0 : plan.flatIn, angleIn: plan.angleIn }
}

export type MarksFound = {
  /** The one way to read them; null when there is none, or more than one: none is taken silently. */
  readonly read: VendorMarks | null
  readonly readings: readonly VendorMarks[]
  readonly text: string
}

/**
 * The vendor's marks: the first of these texts that can be read as figures, in inches and degrees.
 *
 * @param texts as typed, the one to be trusted most first; empty ones and "none" say nothing
 * @returns the readings of the first that can be read at all; of none, `text` is the first that says something, '' when
 *   none does
 *
 * Example: "none", "20 + 63" → flat 0.020, angle part 0.063. Derived: as `readMarks`.
 */
export function marksFound(texts: readonly string[]): MarksFound {
  const said = texts.map((text) => text.trim()).filter((text) => text !== '' && text.toLowerCase() !== 'none')
  for (const text of said) {
    const read = readMarks(text)
    if (!read.ok) continue
    const [first, ...others] = read.value
    return { read: others.length === 0 ? first : null, readings: read.value, text }
  }
  return { read: null, readings: [], text: said[0] ?? '' }
}

export type CutAgainst = {
  readonly wanted: WantedFacts
  readonly deepEdge: 'intake' | 'exhaust'
  readonly marks: VendorMarks | null
  /** Every way to read them, for the edge that they name. */
  readonly readings?: readonly VendorMarks[]
  /** How far a depth may be off, in inches. */
  readonly toleranceIn: number
}

export type CheckedCut = {
  readonly by: MeasuredCut['by']
  readonly rows: readonly CutCheckRow[]
  /** What a head that leaned before the cut adds to the flat part, in inches; null: not known. */
  readonly leanShiftIn: number | null
  readonly measured: { readonly flatIn: number; readonly angleIn: number }
  /** It lies deep at the other edge than the plan wants. */
  readonly deepAtOtherEdge: boolean
  /** The marks name the other edge than the plan wants. */
  readonly marksOtherEdge: boolean
}

/**
 * The cut of one step against plan or order and against its maker's marks, depths in inches.
 *
 * @param toleranceIn of `against`, 0–0.1 in
 * @returns null before it was measured; the edge is wrong when the angle part is below −tolerance
 *
 * Example: 0.0205 flat measured, 0.020 wanted, tolerance 0.002 → off 0.0005, within.
 * Derived: `cutCheck` of `cutMeasuredAt` and `cutWantedAt`.
 */
export function checkCutAt(facts: CutFacts, at: AtStep, against: CutAgainst): CheckedCut | null {
  const measured = cutMeasuredAt(facts, at)
  if (!measured) return null
  const { wanted, deepEdge, marks, readings, toleranceIn } = against
  const rows = cutCheck({
    measured: measured.cut,
    wanted: cutWantedAt(wanted, at),
    marks,
    toleranceIn,
    milledWidthIn: wanted.milledWidthIn,
  })
  return {
    by: measured.by,
    rows,
    leanShiftIn: measured.cut.leanShiftIn ?? null,
    deepAtOtherEdge: measured.cut.angleIn < -toleranceIn,
    measured: measured.cut,
    marksOtherEdge: (readings ?? (marks ? [marks] : [])).some(({ edge }) => edge !== null && edge !== deepEdge),
  }
}
