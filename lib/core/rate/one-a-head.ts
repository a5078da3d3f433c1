import type { TaughtCut } from './shop-cuts'

/** A cut of one visit, with the head it was made on. */
export type CutOfHead = { readonly headId: string; readonly taught: TaughtCut }

/** Two visits of one head are one head: its cuts are not independent of each other. */
const another = 'another cut of this head counts'

/**
 * One cut a head: where a head was cut on several visits, the deepest that teaches, and the others say why they do not.
 *
 * @param cuts of one casting and chamber form; an unknown head ('') is one of its own; depths in thou
 * @returns in the order given
 *
 * Example: 18 thou on one visit, 6 on the next → the 6 is not counted. Derived: the longest stretch of each head.
 */
export function oneAHead<C extends CutOfHead>(cuts: readonly C[]): readonly C[] {
  const deepest = new Map<string, C>()
  for (const one of cuts) {
    const cut = one.taught.cut
    if (!cut?.likeForLike || one.headId === '') continue
    const before = deepest.get(one.headId)?.taught.cut
    if (!before || cut.depthThou > before.depthThou) deepest.set(one.headId, one)
  }
  return cuts.map((one) => {
    const { cut } = one.taught
    const counts = !cut?.likeForLike || one.headId === '' || deepest.get(one.headId) === one
    return counts ? one : { ...one, taught: { cut: { ...cut, likeForLike: false }, whyNot: another } }
  })
}
