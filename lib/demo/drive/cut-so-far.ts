import { figureAt, type Found } from './found'

/** Metal that is off the deck on this visit, as far as the record tells. */
export type CutSoFar = { readonly flatIn: number; readonly angleIn: number }

export function cutSoFar(found: Found): CutSoFar {
  const back = found.visit.outside.filter((order) => order.receivedAt !== null && order.confirmed !== '')
  const outside = (part: 'angleIn' | 'flatIn') => back.reduce((sum, order) => sum + order[part], 0)
  const edges = (['intake', 'exhaust'] as const).map((edge) => figureAt(found, 'angle-cut', 'edge-depth', edge) ?? 0)
  return {
    flatIn: outside('flatIn') + (figureAt(found, 'flat-cut', 'cut-depth', '') ?? 0),
    angleIn: outside('angleIn') + Math.max(0, ...edges),
  }
}

/** Flat part that is still to be cut here. */
export function flatLeftIn(found: Found): number {
  const outside = found.visit.outside.reduce((sum, order) => sum + order.flatIn, 0)
  return Math.max(0, (found.plan?.flatIn ?? 0) - outside)
}

/** Depth of what is cut at a place across the deck: 0 at the shallow edge, 1 at the deep one. */
export const depthAcross = ({ flatIn, angleIn }: CutSoFar, share: number): number => flatIn + angleIn * share
