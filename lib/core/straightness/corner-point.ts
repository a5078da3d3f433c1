export type CornerName = 'intake-1' | 'exhaust-1' | 'intake-2' | 'exhaust-2'

/**
 * Where a corner is touched, in the section frame: x across from the shallow edge, y along from end 1, in inches.
 *
 * @param insetIn how far inside the edges the gauge touches, both ways (default 0)
 *
 * Example: deep at the exhaust edge, 7 × 20 in, `exhaust-2` touched half an inch inside → (6.5, 19.5).
 * By definition of the section frame.
 */
export function cornerPoint(
  corner: CornerName,
  deck: {
    readonly deepEdge: 'intake' | 'exhaust'
    readonly milledWidthIn: number
    readonly deckLengthIn: number
  },
  insetIn = 0,
): { readonly xIn: number; readonly yIn: number } {
  const [edge, end] = corner.split('-')
  return {
    xIn: edge === deck.deepEdge ? deck.milledWidthIn - insetIn : insetIn,
    yIn: end === '2' ? deck.deckLengthIn - insetIn : insetIn,
  }
}
