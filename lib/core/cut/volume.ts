import { knownFacts } from '../known-facts'
import { factOf } from '../units/fact-of'
import { ok, refuse, type Result } from '../errors'
import { ccPerIn3 } from '../units/factors'

/**
 * Volume a cut takes from one chamber, in cc.
 *
 * @param opening area of the opening in in² (0.5–40) and its centroid's distance from the shallow edge in inches
 * @param cut flat part and angle part at the deep edge in inches (0–0.5 together), milled width in inches (1–20)
 *
 * ΔV = 16.387064·A·(f + w·x_c/W); exact while the chamber wall is square to the deck (the mean of a plane over an area
 * is its value at the centroid). A flat part below zero is refused: the cut would run out short of the edge.
 * Example: W 7.000, circle 3.600 dia at 3.500, 1° (w 0.12219) → 10.190 cc.
 * Derived: area times the depth at the centroid.
 */
export function cutVolumeCc(
  opening: { readonly areaIn2: number; readonly centreIn: number },
  cut: { readonly flatIn: number; readonly angleIn: number; readonly milledWidthIn: number },
): Result<number> {
  if (cut.flatIn < 0) {
    return refuse('out-of-range', 'A flat part below zero would run out short of the edge and leave a ridge.')
  }
  const facts = knownFacts({
    areaIn2: factOf('opening area', opening.areaIn2, 'area'),
    milledWidthIn: factOf('milled width', cut.milledWidthIn, 'milledWidth'),
    centreIn: ['centre of the opening', opening.centreIn, 0, cut.milledWidthIn],
    flatIn: factOf('flat part', cut.flatIn, 'cutDepth'),
    angleIn: factOf('angle part', cut.angleIn, 'cutDepth'),
  })
  if (!facts.ok) return facts
  const depthIn = cut.flatIn + (cut.angleIn * opening.centreIn) / cut.milledWidthIn
  return ok(ccPerIn3 * opening.areaIn2 * depthIn)
}

/**
 * What sinking a valve adds to the chamber, in cc: π/4·D²·q·16.387064.
 *
 * @param headDiameterIn valve head, 0.3–5 in
 * @param sinkIn along the valve's axis, 0–0.25 in
 *
 * Example: D 2.05, 0.010 → 0.54 cc.
 * Derived: the cylinder that the valve head sweeps.
 */
export function sinkVolumeCc(headDiameterIn: number, sinkIn: number): Result<number> {
  const facts = knownFacts({
    headDiameterIn: factOf('valve', headDiameterIn, 'valveDiameter'),
    sinkIn: factOf('sink of the seat', sinkIn, 'sink'),
  })
  return facts.ok ? ok((Math.PI / 4) * headDiameterIn ** 2 * sinkIn * ccPerIn3) : facts
}
