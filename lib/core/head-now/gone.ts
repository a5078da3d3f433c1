import type { CornerName } from '../straightness/corner-point'
import { cornerNames } from '../straightness/corners-fit'

/**
 * Metal gone from a deck since the head was new: depths square to the new deck, in inches, at the two edges at
 * mid-length, and by how much more is gone at end 2 than at end 1. Edges are named, so that cuts deep at either edge
 * add up.
 */
export type Gone = {
  readonly atIntakeEdgeIn: number
  readonly atExhaustEdgeIn: number
  readonly taperIn: number
}

/** A cut that is known by its parts: flat everywhere, the angle part at the deep edge and nothing at the other. */
export type KnownCut = {
  readonly flatIn: number
  readonly angleIn: number
  readonly deepEdge: 'intake' | 'exhaust'
}

export const nothingGone: Gone = { atIntakeEdgeIn: 0, atExhaustEdgeIn: 0, taperIn: 0 }

/**
 * The same depth gone all over, in inches.
 * By definition of a flat cut. Example: 0.020 → 0.020 at both edges, no taper.
 */
export const flatGone = (depthIn: number): Gone => ({ atIntakeEdgeIn: depthIn, atExhaustEdgeIn: depthIn, taperIn: 0 })

/**
 * What one cut takes at the two edges, in inches.
 * Derived: f at the shallow edge, f + w at the deep one. Example: 0.020 flat and 0.063 deep at the exhaust edge →
 * 0.020 and 0.083.
 */
export const goneByCut = ({ flatIn, angleIn, deepEdge }: KnownCut): Gone => ({
  atIntakeEdgeIn: flatIn + (deepEdge === 'intake' ? angleIn : 0),
  atExhaustEdgeIn: flatIn + (deepEdge === 'exhaust' ? angleIn : 0),
  taperIn: 0,
})

/**
 * Cuts one after the other, in inches.
 *
 * Each depth is square to the deck it was cut on; added up as if all were square to the new deck, which is good to 0.004
 * thou for ordinary cuts and 0.08 thou at 2° with 0.31 in gone.
 * Derived: D = Σ(f + w·ξ). Example: 0.020 flat, then 0.063 at the exhaust edge → 0.020 and 0.083.
 */
export const sumOfGone = (parts: readonly Gone[]): Gone =>
  parts.reduce(
    (sum, part) => ({
      atIntakeEdgeIn: sum.atIntakeEdgeIn + part.atIntakeEdgeIn,
      atExhaustEdgeIn: sum.atExhaustEdgeIn + part.atExhaustEdgeIn,
      taperIn: sum.taperIn + part.taperIn,
    }),
    nothingGone,
  )

/**
 * How deep the deck of now lies under the new one at a place, in inches.
 *
 * @param acrossShare ξ, from the intake edge as a part of the milled width, 0–1
 * @param alongShare from end 1 as a part of the length, 0–1; left out: mid-length
 *
 * D(ξ) = D(0) + ξ·(D(1) − D(0)), and the taper's part of it along.
 * Derived: the plane through the depths at the edges. Example: 0.020 at the intake edge, 0.083 at the exhaust edge,
 * ξ 0.635 → 0.0600.
 */
export const deckNowFromNewDeckIn = (gone: Gone, acrossShare: number, alongShare = 0.5): number =>
  gone.atIntakeEdgeIn + acrossShare * (gone.atExhaustEdgeIn - gone.atIntakeEdgeIn) + gone.taperIn * (alongShare - 0.5)

/**
 * Metal gone at one corner, in inches.
 * Derived: the plane at that edge and end. Example: 0.020 at both edges, 0.002 of taper → 0.021 at end 2.
 */
export const goneAtCornerIn = (gone: Gone, corner: CornerName): number =>
  deckNowFromNewDeckIn(gone, corner.startsWith('exhaust') ? 1 : 0, corner.endsWith('2') ? 1 : 0)

/**
 * Metal gone where most is gone, in inches; never below zero.
 * Derived: a plane is deepest at a corner. Example: 0.020 and 0.083 at the edges, 0.002 of taper → 0.084.
 */
export const mostGoneIn = (gone: Gone): number => Math.max(0, ...cornerNames.map((name) => goneAtCornerIn(gone, name)))

/**
 * Metal gone where least is gone, in inches; never below zero.
 * Derived: a plane is shallowest at a corner. Example: 0.020 and 0.083 at the edges, 0.002 of taper → 0.019.
 */
export const leastGoneIn = (gone: Gone): number =>
  Math.max(0, Math.min(...cornerNames.map((name) => goneAtCornerIn(gone, name))))

/**
 * The same head at the end where more is gone, as if it had no taper: what a place whose chamber is not named is held
 * against.
 * Derived: half the taper added at both edges. Example: 0.020 at both edges, 0.002 of taper → 0.021 at both.
 */
export const atDeeperEnd = ({ atIntakeEdgeIn, atExhaustEdgeIn, taperIn }: Gone): Gone => ({
  atIntakeEdgeIn: atIntakeEdgeIn + Math.abs(taperIn) / 2,
  atExhaustEdgeIn: atExhaustEdgeIn + Math.abs(taperIn) / 2,
  taperIn: 0,
})
