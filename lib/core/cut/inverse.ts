import { ok, refuse, type Result } from '../errors'
import { knownFacts } from '../known-facts'
import { ccPerIn3 } from '../units/factors'
import { factOf } from '../units/fact-of'
import { quantities } from '../units/quantities'
import { edgeDepthIn } from './angle'
import type { Opening } from './outline'
import { angleBeside, flatBeside } from './split'

/** An opening on a deck of this width. */
export type OpeningOnDeck = Opening & { readonly milledWidthIn: number }

/**
 * Flat depth that takes a volume from one chamber, in inches.
 *
 * @param takeCc 0–400; less than nothing is refused: a cut only makes a chamber smaller
 * @param areaIn2 of the opening, 0.5–40
 * @returns ΔV/(16.387064·A); more than 0.5 in is refused as `unreachable`
 *
 * Also the depth at the centroid of any other cut that takes as much. Example: 3 cc from 10.1706 in² → 0.0180.
 * Derived: the inverse of `cutVolumeCc` without an angle part.
 */
export function flatForVolume(takeCc: number, areaIn2: number): Result<number> {
  if (takeCc < 0)
    return refuse('unreachable', 'A cut only makes a chamber smaller: to make it larger, open the chamber.')
  const facts = knownFacts({
    takeCc: factOf('cc to take', takeCc, 'volume'),
    areaIn2: factOf('opening area', areaIn2, 'area'),
  })
  if (!facts.ok) return facts
  const depthIn = facts.value.takeCc / (ccPerIn3 * facts.value.areaIn2)
  if (depthIn <= quantities.cutDepth.most) return ok(depthIn)
  return refuse('unreachable', `That would take ${depthIn.toFixed(3)} in: more than any head allows.`)
}

function shareOf({ centreIn, milledWidthIn }: OpeningOnDeck): Result<number> {
  const width = knownFacts({ milledWidthIn: factOf('milled width', milledWidthIn, 'milledWidth') })
  return width.ok ? ok(centreIn / milledWidthIn) : width
}

/**
 * Angle part at the deep edge, in inches, that takes what a given flat part leaves of a volume.
 *
 * @param takeCc 0–400; @param flatIn 0–0.5; @param opening area 0.5–40 in², its centre from the shallow edge, milled width
 * @returns w = (ΔV/(16.387064·A) − f)·W/x_c; `unreachable` when the flat part alone takes more
 *
 * Example: 10 cc from 10.1706 in² centred at 4.445 of 7 with 0.020 flat → 0.063.
 * Derived: `cutVolumeCc` solved for w.
 */
export function angleForVolume(takeCc: number, flatIn: number, opening: OpeningOnDeck): Result<number> {
  const depth = flatForVolume(takeCc, opening.areaIn2)
  if (!depth.ok) return depth
  const share = shareOf(opening)
  if (!share.ok) return share
  const angle = angleBeside(depth.value, share.value, flatIn)
  if (!angle.ok || flatIn + angle.value <= quantities.cutDepth.most) return angle
  return refuse('unreachable', `That would take ${(flatIn + angle.value).toFixed(3)} in at the deep edge.`)
}

/**
 * Flat part, in inches, beside a given angle.
 *
 * @param takeCc 0–400; @param angleDeg 0–5; @param opening as for `angleForVolume`
 * @returns f = ΔV/(16.387064·A) − x_c·tan φ; `unreachable` when the angle alone takes more
 *
 * Example: circle of 3.600 in at 3.500 of 7, 10.190 cc at 1° → 0.
 * Derived: `cutVolumeCc` solved for f, with w = W·tan φ.
 */
export function flatAtAngle(takeCc: number, angleDeg: number, opening: OpeningOnDeck): Result<number> {
  const depth = flatForVolume(takeCc, opening.areaIn2)
  if (!depth.ok) return depth
  const share = shareOf(opening)
  if (!share.ok) return share
  const angle = edgeDepthIn(angleDeg, opening.milledWidthIn)
  return angle.ok ? flatBeside(depth.value, share.value, angle.value) : angle
}
