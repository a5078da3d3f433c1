import { figureKey, type CutSince, type ExpectedFacts } from './types'

/**
 * Depth at both edges of all that is cut off this head on this visit, in inches, with what is being typed at the mill.
 *
 * @returns null: cut, and not measured
 *
 * Derived: the depth typed takes the place of the one that was kept. Example: 0.012 kept, 0.018 typed → 0.018 at both.
 */
export function cutHere({ stepId, cut, here, millDepthIn, mill, deepEdge }: ExpectedFacts): CutSince | null {
  if (!cut) return null
  if (stepId === 'flat-cut') {
    const countedIn = mill.touchedOffAnew ? 0 : millDepthIn
    const more = (here[figureKey('cut-depth', '')] ?? countedIn) - countedIn
    return { shallowIn: cut.shallowIn + more, deepIn: cut.deepIn + more }
  }
  if (stepId !== 'angle-cut') return cut
  const shallow = deepEdge === 'exhaust' ? 'intake' : 'exhaust'
  return {
    shallowIn: here[figureKey('edge-depth', shallow)] ?? cut.shallowIn,
    deepIn: here[figureKey('edge-depth', deepEdge)] ?? cut.deepIn,
  }
}
