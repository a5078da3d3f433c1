import { cornersOf } from '@/lib/core/straightness/corners-fit'
import type { Dossier } from './dossier'

/** A mate that is on hold, once for each reason: whoever works on a head is told. */
export type HeldMate = {
  readonly visitId: string
  readonly headId: string
  readonly tag: string
  readonly reason: string
}

export const heldMates = ({ mates }: Pick<Dossier, 'mates'>): HeldMate[] =>
  mates.flatMap(({ visitId, headId, label, holdReasons }) =>
    holdReasons.map((reason) => ({ visitId, headId, tag: label, reason })),
  )

/** Of the heads of a pair, the others. */
export const matesIn = (pair: readonly Dossier[], { visit: { id, pairId } }: Dossier): Dossier[] =>
  pair.filter(({ visit }) => visit.pairId === pairId && visit.id !== id)

export type MateCorners = {
  readonly tag: string
  /** In inches, by corner. */
  readonly corners: ReturnType<typeof cornersOf>
}

/** The finished corner thicknesses of these heads, as far as they are measured; one that left undone is passed over. */
export const mateCorners = (mates: readonly Dossier[]): MateCorners[] =>
  mates
    .filter(({ visit }) => visit.scrappedAt === null && visit.returned === null && visit.takenOffAt === null)
    .map(({ label, readings }) => ({
      tag: label,
      corners: cornersOf(readings.filter(({ step }) => step.stepId === 'finished')),
    }))
