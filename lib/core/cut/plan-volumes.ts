import type { HeadAfter, HeadNow, OutOfTolerance, PlanInput } from './plan-types'
import type { Parts } from './split'

/** The cc of every chamber of every head of a plan. */
export const allChambers = ({ heads }: PlanInput): readonly number[] => heads.flatMap((head) => head.chambersCc)

/**
 * Each head after a cut that takes this much of every chamber; nothing when that is not known.
 * Derived: each chamber less what the cut takes, plus what seat work adds. Example: 64.0 cc less 3.0 plus 0.5 → 61.0
 * and 61.5 cc.
 */
export function headsAfter(input: PlanInput, removesCc: number | null, cut: Parts): HeadAfter[] {
  const left = (cc: number) => (removesCc === null ? [] : [cc - removesCc])
  return input.heads.map((head) => ({
    tag: head.tag,
    chambersAfterCutCc: head.chambersCc.flatMap(left),
    chambersFinishedCc: head.chambersCc.flatMap(left).map((cc) => cc + input.seatWorkGivesCc),
    thicknessLeftIn: thicknessLeftIn(head, cut, input.deepEdge ?? 'exhaust'),
  }))
}

/**
 * Thickness that a cut leaves where the head is then thinnest, in inches; null: not measured. Without a corner read at an
 * edge the thinnest of all is taken there.
 * Derived: at each edge its thinnest corner less what goes there. Example: 4.480 at the intake edge and 4.400 at the
 * exhaust edge, 0.020 flat and 0.063 deep at the intake edge → 4.380.
 */
export function thicknessLeftIn(
  head: HeadNow,
  { flatIn, angleIn }: Parts,
  deepEdge: 'intake' | 'exhaust',
): number | null {
  const { thicknessIn } = head
  if (thicknessIn === null) return null
  const at = (edge: 'intake' | 'exhaust') => head.edgeThicknessIn?.[edge] ?? thicknessIn
  const shallow = deepEdge === 'exhaust' ? 'intake' : 'exhaust'
  return Math.min(at(shallow) - flatIn, at(deepEdge) - flatIn - angleIn)
}

/** Figures that sit on the tolerance must not fall out of it by being added up in another order. */
const roundingCc = 1e-9

/** Cutting moves every chamber alike: what is uneven before stays uneven. */
export function outOfTolerance(input: PlanInput, heads: readonly HeadAfter[]): OutOfTolerance[] {
  const { targetCc, toleranceCc, kind } = input
  if (targetCc === null || kind === 'none' || kind === 'clean-up') return []
  return heads.flatMap(({ tag, chambersFinishedCc }) =>
    chambersFinishedCc.flatMap((finishedCc, at) => {
      const overCc = finishedCc - targetCc
      const within = Math.abs(overCc) <= toleranceCc + roundingCc
      return within ? [] : [{ tag, chamber: at + 1, finishedCc, overCc }]
    }),
  )
}
