import { heightOver, movedPoint, type Motion } from '../clearance/rigid-motion'
import { ok, refuse, type Result } from '../errors'
import { knownFacts } from '../known-facts'
import { degrees, radians } from '../units/degrees'
import { factOf } from '../units/fact-of'
import { quantities } from '../units/quantities'
import type { Gone } from './gone'

export type Edge = 'intake' | 'exhaust'

/**
 * The deck as it is now, seen from the new one, in the section frame of a cut: x from the shallow edge of that cut.
 * Positive angle: the deck already leans the way that the cut will; negative: the other way.
 */
export type DeckNow = Motion & { readonly deck: 'now' }

/** Depths at the edges that differ by less than this are a flat deck: no gauge reads a millionth of an inch. */
const levelIn = 1e-9

/**
 * The deck of now as a motion of the head from where it sat when new.
 *
 * @param gone depths at both edges, 0–1 in
 * @param deepEdge of the cut whose frame is asked for
 * @param milledWidthIn 1–20 in; a deck that is flat needs none
 * @returns flat part at the shallow edge, slope toward the deep one and whole angle Φ; at most 5° either way
 *
 * Φ = atan((gone at the deep edge − gone at the shallow edge)/W).
 * Derived: the plane through the depths at the edges. Example: 0.020 at the intake edge and 0.1422 at the exhaust edge
 * of 7 in, frame of a cut deep at the exhaust edge → flat part 0.020, Φ 1.0°.
 */
export function deckNow(gone: Gone, deepEdge: Edge, milledWidthIn: number | null | undefined): Result<DeckNow> {
  const { atIntakeEdgeIn, atExhaustEdgeIn } = gone
  const edges = knownFacts({
    atIntakeEdgeIn: goneFact('metal gone at the intake edge', atIntakeEdgeIn),
    atExhaustEdgeIn: goneFact('metal gone at the exhaust edge', atExhaustEdgeIn),
  })
  if (!edges.ok) return edges
  const [shallowIn, deepIn] =
    deepEdge === 'exhaust' ? [atIntakeEdgeIn, atExhaustEdgeIn] : [atExhaustEdgeIn, atIntakeEdgeIn]
  if (Math.abs(deepIn - shallowIn) < levelIn) return ok({ deck: 'now', flatIn: shallowIn, slope: 0, angleRad: 0 })
  const width = knownFacts({ milledWidthIn: factOf('milled width', milledWidthIn, 'milledWidth') })
  if (!width.ok) return width
  const slope = (deepIn - shallowIn) / width.value.milledWidthIn
  if (Math.abs(slope) > Math.tan(radians(quantities.angle.most)) + 1e-12) {
    const leanDeg = degrees(Math.atan(Math.abs(slope)))
    return refuse(
      'out-of-range',
      `The deck would lean ${leanDeg.toFixed(2)}°: more than ${quantities.angle.most}° is no deck. Measure the corners again.`,
    )
  }
  return ok({ deck: 'now', flatIn: shallowIn, slope, angleRad: Math.atan(slope) })
}

/** A corner may read a little thicker than new: as much as a gauge is off. */
const goneFact = (label: string, valueIn: number) =>
  [label, valueIn, quantities.removed.least - 0.05, quantities.removed.most] as const

/** A place on record: across from the shallow edge, and square to the deck that the head had when new. */
export type PlaceFromNewDeck = { readonly fromShallowEdgeIn: number; readonly heightFromNewDeckIn: number }

/** The same place seen from the deck as it is now. */
export type PlaceFromDeckNow = { readonly fromShallowEdgeIn: number; readonly heightFromDeckNowIn: number }

/**
 * Height of a place over the deck as it is now, square to it, in inches.
 *
 * h = (z − D)·cos Φ, D the depth of the deck of now under the new one at the place's own x.
 * Derived: distance of a point from the plane of the deck. Example: 0.1292 from the new deck, 0.140 gone flat →
 * −0.0108: the deck has gone through it.
 */
export const heightFromDeckNowIn = (deck: DeckNow, place: PlaceFromNewDeck): number =>
  heightOver(deck, { xIn: place.fromShallowEdgeIn, zIn: place.heightFromNewDeckIn })

/**
 * A place of the record as it lies to the deck of now: across from where the deck of now meets the shallow edge, and
 * square to it, in inches.
 * Derived: rotation by Φ about the edge. Example: 1° deep at this cut's deep edge, nothing at the other, a place 4 in up
 * over the shallow edge → 0.0698 across, 3.9994 up.
 */
export function placeFromDeckNow(deck: DeckNow, place: PlaceFromNewDeck): PlaceFromDeckNow {
  const point = { xIn: place.fromShallowEdgeIn, zIn: place.heightFromNewDeckIn }
  const moved = movedPoint(deck, 0, point)
  return { fromShallowEdgeIn: moved.xIn, heightFromDeckNowIn: moved.zIn }
}

/**
 * Where a place that was measured from the deck of now lies across it, given its place across on record, in inches.
 *
 * x' = x/cos Φ + h'·tan Φ. Derived: `placeFromDeckNow` with the height solved out of it.
 * Example: 1°, x 3.500 and 0.5 in over the deck of now → 3.5093.
 */
export const acrossDeckNowIn = (deck: DeckNow, fromShallowEdgeIn: number, heightFromDeckNow: number): number =>
  fromShallowEdgeIn / Math.cos(deck.angleRad) + heightFromDeckNow * Math.tan(deck.angleRad)
