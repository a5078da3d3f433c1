import { knownFacts, type Fact } from '../known-facts'
import { ok, refuse, type Result } from '../errors'
import { factOf } from '../units/fact-of'
import { quantities } from '../units/quantities'
import { formatThou } from '../units/format-figure'
import type { CastingFacts } from '../casting/figures'

export type Parts = { readonly flatIn: number; readonly angleIn: number }

/**
 * Depth of a cut at the chamber's centroid, which is what takes the volume: D = f + w·s, s = x_c/W the centroid's share
 * of the milled width from the shallow edge. Inches; null for an angle cut whose centroid is not known.
 * Example: 0.020 flat and 0.063 at the edge, share 0.635 → 0.060.
 * Derived: the mean of a plane over an area is its value at the centroid.
 */
export function depthAtCentroid({ flatIn, angleIn }: Parts, centroidShare: number | null): number | null {
  if (angleIn === 0) return flatIn
  return centroidShare === null ? null : flatIn + angleIn * centroidShare
}

/**
 * The centroid's share of the milled width, from a casting's record; null as long as one of the two is not known, or the
 * width is none that is milled. Example: 4.445 of 7 → 0.635.
 * By definition: x_c/W.
 */
export const centroidShareOf = ({ openingCentreIn, milledWidthIn }: CastingFacts): number | null =>
  openingCentreIn === undefined || milledWidthIn === undefined || milledWidthIn < quantities.milledWidth.least
    ? null
    : openingCentreIn / milledWidthIn

/** Where a chamber's centroid can lie: never on an edge. */
export const shareFact = (centroidShare: number | null | undefined): Fact => [
  'centre of the opening, and the milled width',
  centroidShare,
  0.02,
  0.98,
]

/**
 * The angle part beside a given flat part.
 *
 * @param depthIn wanted at the centroid, 0–0.5 in
 * @param centroidShare 0.02–0.98
 * @param flatIn 0–0.5 in; more than the depth is refused as `unreachable`
 * @returns inches at the deep edge: w = (D − f)/s. Example: 0.060 with 0.020 flat, share 0.635 → 0.063.
 * Derived: `depthAtCentroid` solved for w.
 */
export function angleBeside(depthIn: number, centroidShare: number | null | undefined, flatIn: number): Result<number> {
  const facts = knownFacts({
    depthIn: factOf('depth at the chamber’s centre', depthIn, 'cutDepth'),
    centroidShare: shareFact(centroidShare),
    flatIn: factOf('flat part', flatIn, 'cutDepth'),
  })
  if (!facts.ok) return facts
  // Rounding of the same figures must not read as a cut too many.
  if (flatIn <= depthIn + 1e-9) return ok(Math.max(0, depthIn - flatIn) / facts.value.centroidShare)
  return refuse(
    'unreachable',
    `${formatThou(flatIn)} flat is more than the ${formatThou(depthIn)} needed. Enter a smaller flat part.`,
  )
}

/**
 * The flat part beside a given angle part.
 *
 * @param depthIn wanted at the centroid, 0–0.5 in
 * @param centroidShare 0.02–0.98
 * @param angleIn at the deep edge, 0–0.5 in; one that takes more than the depth by itself is refused as `unreachable`:
 *   a negative flat part would run out short of the edge and leave a ridge
 * @returns inches: f = D − w·s. Example: 0.060 with 0.063 at the edge, share 0.635 → 0.020.
 * Derived: `depthAtCentroid` solved for f.
 */
export function flatBeside(depthIn: number, centroidShare: number | null | undefined, angleIn: number): Result<number> {
  const facts = knownFacts({
    depthIn: factOf('depth at the chamber’s centre', depthIn, 'cutDepth'),
    // A flat cut takes the same wherever the chamber lies.
    centroidShare: shareFact(angleIn === 0 ? 0.5 : centroidShare),
    angleIn: factOf('angle part', angleIn, 'cutDepth'),
  })
  if (!facts.ok) return facts
  const flatIn = depthIn - angleIn * facts.value.centroidShare
  if (flatIn >= -1e-9) return ok(Math.max(0, flatIn))
  return refuse(
    'unreachable',
    `The angle alone takes ${formatThou(depthIn - flatIn)} at the chamber’s centre, more than the ${formatThou(depthIn)} needed. Enter a smaller angle.`,
  )
}
