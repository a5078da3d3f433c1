import type { CornerInset } from './corner-inset'

export type CornerName = 'intake-1' | 'exhaust-1' | 'intake-2' | 'exhaust-2'

/** Touched right at the edges and ends. */
export const atTheEdges: CornerInset = { edgeIn: 0, endIn: 0 }

/**
 * Where a corner is touched, in the section frame: x across from the shallow edge, y along from end 1, in inches.
 *
 * @param inset how far inside the long edges and the ends the gauge touches (default: at the edges)
 *
 * Example: deep at the exhaust edge, 7 × 20 in, `exhaust-2` touched half an inch inside both ways → (6.5, 19.5).
 * By definition of the section frame.
 */
export function cornerPoint(
  corner: CornerName,
  deck: {
    readonly deepEdge: 'intake' | 'exhaust'
    readonly milledWidthIn: number
    readonly deckLengthIn: number
  },
  inset: CornerInset = atTheEdges,
): { readonly xIn: number; readonly yIn: number } {
  const [edge, end] = corner.split('-')
  return {
    xIn: edge === deck.deepEdge ? deck.milledWidthIn - inset.edgeIn : inset.edgeIn,
    yIn: end === '2' ? deck.deckLengthIn - inset.endIn : inset.endIn,
  }
}
