/**
 * What to take off an intake face at its two ends, in inches, never negative. Where the sum would be negative the face
 * stands off the flange already: then only the wedge is cut, so that the face is parallel again, and `gapIn` is left
 * all over.
 */
export type FaceCut = {
  readonly deckEndIn: number
  readonly coverEndIn: number
  readonly gapIn: number
}

/**
 * Why a figure near a flange lying flat is not to be cut to.
 * Derived: d/dx of 1/cos x is tan x times it, for one degree. Example: 84.9° → 20 %.
 */
export const nearlyFlatWording = (flangeDeg: number): string =>
  `half the bank angle and the face angle come to ${flangeDeg.toFixed(1)}°, near 90°, where one degree of error changes this figure by ${Math.round(Math.tan((flangeDeg * Math.PI) / 180) * (Math.PI / 180) * 100)} %: measure both angles, and fit the manifold before you cut`

export const gapWording = 'thicker gasket or manifold work; cut only the wedge'
