import type { HeadAfter, OutOfTolerance, PlanInput } from './plan-types'

/** The cc of every chamber of every head of a plan. */
export const allChambers = ({ heads }: PlanInput): readonly number[] => heads.flatMap((head) => head.chambersCc)

/**
 * Each head after a cut that takes this much of every chamber; nothing when that is not known.
 * Derived: each chamber less what the cut takes, plus what seat work adds. Example: 64.0 cc less 3.0 plus 0.5 → 61.0
 * and 61.5 cc.
 */
export function headsAfter(input: PlanInput, removesCc: number | null, deepestIn: number): HeadAfter[] {
  const left = (cc: number) => (removesCc === null ? [] : [cc - removesCc])
  return input.heads.map(({ tag, chambersCc, thicknessIn }) => ({
    tag,
    chambersAfterCutCc: chambersCc.flatMap(left),
    chambersFinishedCc: chambersCc.flatMap(left).map((cc) => cc + input.seatWorkGivesCc),
    thicknessLeftIn: thicknessIn === null ? null : thicknessIn - deepestIn,
  }))
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
