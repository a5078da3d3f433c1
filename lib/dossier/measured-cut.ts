import {
  cornersFit,
  cornersOf,
  edgesCut,
  type Corners,
  type CornersFit,
  type Deck,
} from '@/lib/core/straightness/corners-fit'
import { cornerInsetOf } from '@/lib/core/straightness/corner-inset'
import type { RouteFacts } from '@/lib/core/route/types'
import type { StepId } from '@/lib/core/route/step-ids'
import type { EffectiveReading } from '@/lib/core/readings/effective'
import type { Dossier } from './dossier'
import { valuedAt } from './reading-text'

export { cornerNames as corners } from '@/lib/core/straightness/corners-fit'

type Readings = RouteFacts['readings']

/** Corner thicknesses by the step they were taken at, the newest of each; `orderId` narrows an arrival to its order. */
export const cornersOfStep = (readings: Readings, stepId: StepId, orderId: string | null = null): Corners =>
  cornersOf(readings.filter(({ step }) => step.stepId === stepId && step.orderId === orderId))

/** The same as readings. */
export const cornersAt = (
  { newest: readings }: Pick<Dossier, 'newest'>,
  stepId: 'thickness' | 'arrival-figures' | 'finished',
  orderId: string | null = null,
) => readings.filter(({ step, kind }) => kind === 'thickness' && step.stepId === stepId && step.orderId === orderId)

const deckOf = ({ plan, casting, settings }: Dossier): Deck => ({
  deepEdge: plan?.deepEdge ?? 'exhaust',
  milledWidthIn: casting.milledWidthIn,
  deckLengthIn: casting.deckLengthIn,
  inset: cornerInsetOf(casting, settings.cornerInset),
})

/** What was really cut, by a plane through the corners before and after; null when that cannot be had. */
export function fitOf(head: Dossier, after: readonly EffectiveReading[]): CornersFit | null {
  const fit = cornersFit(deckOf(head), cornersOfStep(head.newest, 'thickness'), cornersOf(after))
  return fit.ok ? fit.value : null
}

/** Thickness lost at each edge, mean of its corners: what can be said while the deck's size is not on record. */
export function edgesLost(
  head: Dossier,
  after: readonly EffectiveReading[],
): { intake: number; exhaust: number } | null {
  const sizeless: Deck = { deepEdge: 'exhaust', milledWidthIn: null, deckLengthIn: null, inset: null }
  const lost = edgesCut(sizeless, cornersOfStep(head.newest, 'thickness'), cornersOf(after))
  return lost && { intake: lost.shallowIn, exhaust: lost.deepIn }
}

/** Whether metal went off the deck on this visit. */
export const wasCut = ({ route }: Dossier): boolean =>
  route.some((step) => (step.stepId === 'flat-cut' || step.stepId === 'angle-cut') && step.state === 'done')

/**
 * Depth of all deck cuts of this visit at each edge, in inches, as measured: by the corners, else by what was read at the
 * machine. Null: not measured; a vendor's cut without corners is not, and our flat part alone would say too little.
 */
export function edgesMeasured(head: Dossier): { intake: number; exhaust: number } | null {
  const after = cornersAt(head, 'finished')
  const fit = fitOf(head, after)
  if (fit) {
    const deepEdge = head.plan?.deepEdge ?? 'exhaust'
    const at = (edge: 'intake' | 'exhaust') => fit.flatIn + (edge === deepEdge ? fit.angleIn : 0)
    return { intake: at('intake'), exhaust: at('exhaust') }
  }
  const lost = edgesLost(head, after)
  if (lost || head.facts.orders.some((order) => order.confirmed.includes('angle-cut'))) return lost
  const flat = valuedAt(head.newest, 'flat-cut', 'cut-depth').at(-1)?.value
  const edges = valuedAt(head.newest, 'angle-cut', 'edge-depth')
  if (flat === undefined && edges.length === 0) return null
  const at = (edge: string) => (flat ?? 0) + (edges.find(({ point }) => point === edge)?.value ?? 0)
  return { intake: at('intake'), exhaust: at('exhaust') }
}

/** Deck metal that went on this visit at the deepest, in inches, as measured; null: not measured. */
export function deepestMeasuredIn(head: Dossier): number | null {
  const edges = edgesMeasured(head)
  return edges && Math.max(edges.intake, edges.exhaust)
}
