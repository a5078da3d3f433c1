import { cornerPoint, type CornerName } from '@/lib/core/straightness/corner-point'
import { planeFit, type PlaneFit } from '@/lib/core/straightness/plane-fit'
import type { EffectiveReading } from '@/lib/data/facts'
import type { PaperHead } from './paper-head'
import { mean, valuedAt } from './read'

export const corners: readonly CornerName[] = ['intake-1', 'exhaust-1', 'intake-2', 'exhaust-2']

const at = (readings: readonly EffectiveReading[], corner: CornerName): number | null =>
  readings.find((reading) => reading.kind === 'thickness' && reading.point === corner)?.value ?? null

/** Corner thicknesses by the step they were taken at; `orderId` narrows an arrival to its order. */
export const cornersAt = (
  { readings }: PaperHead,
  stepId: 'thickness' | 'arrival-figures' | 'finished',
  orderId: string | null = null,
) =>
  readings.filter(
    ({ step, kind }) => kind === 'thickness' && step.stepId === stepId && step.orderId === orderId,
  )

/** What was really cut, by a plane through the corners before and after; null when that cannot be had. */
export function fitOf(head: PaperHead, after: readonly EffectiveReading[]): PlaneFit | null {
  const deepEdge = head.plan?.deepEdge ?? 'exhaust'
  const { milledWidthIn, deckLengthIn } = head.casting
  if (milledWidthIn === undefined || deckLengthIn === undefined) return null
  const before = cornersAt(head, 'thickness')
  const fit = planeFit({
    points: corners.map((corner) => ({
      name: corner,
      ...cornerPoint(corner, { deepEdge, milledWidthIn, deckLengthIn }),
      beforeIn: at(before, corner),
      afterIn: at(after, corner),
    })),
    milledWidthIn,
    deckLengthIn,
    gaugedSquareTo: 'new-deck',
  })
  return fit.ok ? fit.value : null
}

/** Thickness lost at each edge, mean of its corners: what can be said while the deck's size is not on record. */
export function edgesLost(
  head: PaperHead,
  after: readonly EffectiveReading[],
): { intake: number; exhaust: number } | null {
  const before = cornersAt(head, 'thickness')
  const lost = (edge: 'intake' | 'exhaust'): number | null => {
    const differences = ([`${edge}-1`, `${edge}-2`] as const).flatMap((corner) => {
      const [from, to] = [at(before, corner), at(after, corner)]
      return from === null || to === null ? [] : [from - to]
    })
    return differences.length === 0 ? null : mean(differences)
  }
  const [intake, exhaust] = [lost('intake'), lost('exhaust')]
  return intake === null || exhaust === null ? null : { intake, exhaust }
}

/** Whether metal went off the deck on this visit. */
export const wasCut = ({ route }: PaperHead): boolean =>
  route.some((step) => (step.stepId === 'flat-cut' || step.stepId === 'angle-cut') && step.state === 'done')

/**
 * Depth of all deck cuts of this visit at each edge, in inches, as measured: by the corners, else by what was read at the
 * machine. Null: not measured; a vendor's cut without corners is not, and our flat part alone would say too little.
 */
export function edgesMeasured(head: PaperHead): { intake: number; exhaust: number } | null {
  const after = cornersAt(head, 'finished')
  const fit = fitOf(head, after)
  if (fit) {
    const deepEdge = head.plan?.deepEdge ?? 'exhaust'
    const at = (edge: 'intake' | 'exhaust') => fit.flatIn + (edge === deepEdge ? fit.angleIn : 0)
    return { intake: at('intake'), exhaust: at('exhaust') }
  }
  const lost = edgesLost(head, after)
  if (lost || head.facts.orders.some((order) => order.confirmed.includes('angle-cut'))) return lost
  const flat = valuedAt(head.readings, 'flat-cut', 'cut-depth').at(-1)?.value
  const edges = valuedAt(head.readings, 'angle-cut', 'edge-depth')
  if (flat === undefined && edges.length === 0) return null
  const at = (edge: string) => (flat ?? 0) + (edges.find(({ point }) => point === edge)?.value ?? 0)
  return { intake: at('intake'), exhaust: at('exhaust') }
}

/** Deck metal that went on this visit at the deepest, in inches, as measured; null: not measured. */
export function deepestMeasuredIn(head: PaperHead): number | null {
  const edges = edgesMeasured(head)
  return edges && Math.max(edges.intake, edges.exhaust)
}
