import type { CastingFacts } from '../casting/figures'
import { fromOtherEdge } from '../casting/other-edge'

type Edge = 'intake' | 'exhaust'

export type CutAsMade = {
  readonly deepEdge: Edge
  readonly flatIn: number
  readonly angleIn: number
  /** Its places counted from the edge that is shallow in this cut. */
  readonly casting: CastingFacts
}

/**
 * A cut by its depth at both edges, told from the edge that it is really shallow at: one that came out deep at the wrong
 * edge is judged as it lies.
 *
 * @param edges depth at the record's shallow and deep edge, in inches; a hair under nothing is a gauge's, and counts as none
 * @returns null where the record has no milled width and the cut is deep at the other edge
 *
 * Derived: the lesser depth is the flat part, the rest the angle part; places as `fromOtherEdge`.
 * Example: 0.080 at the shallow edge and 0.010 at the deep one, exhaust → 0.010 flat and 0.070 at the intake edge.
 */
export function cutAsMade(
  edges: { readonly shallowIn: number; readonly deepIn: number },
  recordDeepEdge: Edge,
  casting: CastingFacts,
): CutAsMade | null {
  const [shallowIn, deepIn] = [Math.max(0, edges.shallowIn), Math.max(0, edges.deepIn)]
  if (deepIn >= shallowIn) {
    return { deepEdge: recordDeepEdge, flatIn: shallowIn, angleIn: deepIn - shallowIn, casting }
  }
  const turned = fromOtherEdge(casting)
  const deepEdge = recordDeepEdge === 'exhaust' ? 'intake' : 'exhaust'
  return turned && { deepEdge, flatIn: deepIn, angleIn: shallowIn - deepIn, casting: turned }
}
