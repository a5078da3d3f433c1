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

export const gapWording = 'gap: thicker gasket or manifold work; cut only the wedge'
