import { uncertaintyOfMeanCc, type ChamberMean } from '../chamber/burette'
import { headEstimate, type HeadAcross, type HeadEstimate } from './head-estimate'

/** A chamber across the cut, with how often it was read. */
export type ReadAcross = {
  readonly chamber: string
  readonly before: ChamberMean
  readonly since: ChamberMean | null
}

export type HeadRead = Omit<HeadAcross, 'chambers'> & { readonly chambers: readonly ReadAcross[] }

/** How many more times to read which chamber. */
export type Further = { readonly chamber: string; readonly readings: number }

/** More than this nobody reads: the burette is not good enough. */
export const mostReadings = 40
/** Less gain than this in cc is none. */
const leastGainCc = 1e-4

/**
 * How many further readings make an uncertainty small enough, each going to the chamber that helps most.
 *
 * @param head as read so far, its spread s_p as it is now
 * @param divisionCc of the burette, in cc
 * @param uncertaintyCc of an estimate: of the mean, say, in cc
 * @param enoughCc it must not be larger, in cc
 * @returns one line a chamber, the one with most readings first; empty: it is small enough; null: no number of readings
 *   helps, the division of the burette is too coarse
 *
 * A reading more makes u² = s_p²/(n + 1) + r²/12. Example: one chamber, s_p 0.3, division 0.2, read twice: u 0.220; three
 * readings give 0.183, so one more for 0.2. Derived: `uncertaintyOfMeanCc` tried with one reading more at a time.
 */
export function furtherReadings(
  head: HeadRead,
  divisionCc: number,
  uncertaintyCc: (estimate: HeadEstimate) => number,
  enoughCc: number,
): readonly Further[] | null {
  const added = new Map<string, number>()
  const uWith = (more: ReadonlyMap<string, number>): number => {
    const estimate = headEstimate(withMore(head, more, divisionCc))
    return estimate ? uncertaintyCc(estimate) : Infinity
  }
  let now = uWith(added)
  for (let count = 0; now > enoughCc; count++) {
    const tried = head.chambers.map(({ chamber }) => {
      const more = new Map(added).set(chamber, (added.get(chamber) ?? 0) + 1)
      return { chamber, uCc: uWith(more) }
    })
    const best = tried.reduce<{ chamber: string; uCc: number } | null>(
      (least, one) => (least && least.uCc <= one.uCc + leastGainCc / 100 ? least : one),
      null,
    )
    if (!best || count >= mostReadings * head.chambers.length || !(best.uCc < now - leastGainCc)) return null
    added.set(best.chamber, (added.get(best.chamber) ?? 0) + 1)
    now = best.uCc
  }
  return [...added].map(([chamber, readings]) => ({ chamber, readings })).sort((a, b) => b.readings - a.readings)
}

/** The same head as if it had been read so many times more: since the cut where it was cut, else before it. */
function withMore(head: HeadRead, more: ReadonlyMap<string, number>, divisionCc: number): HeadAcross {
  const read = ({ meanCc, readingCc, count }: ChamberMean, by: number) => ({
    meanCc,
    uCc: uncertaintyOfMeanCc(readingCc, count + by, divisionCc),
  })
  const chambers = head.chambers.map(({ chamber, before, since }) => {
    const by = more.get(chamber) ?? 0
    if (head.depthThou <= 0 && since === null) return { chamber, before: read(before, by), since }
    const first = since ?? (by > 0 ? { ...before, count: 0 } : null)
    return { chamber, before, since: first && read(first, by) }
  })
  return { ...head, chambers }
}
