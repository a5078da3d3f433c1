import { ok, refuse, type Result } from '../errors'
import type { BenchQuestion, Start } from './bench-types'
import { seatWorkCc } from '../cut/seat-work'
import { meanOrNull } from '../mean'

/**
 * Mean of all chambers of a starting head or pair, in cc; null: neither measured nor on record.
 * By definition: the arithmetic mean. Example: 64.0 and 65.0 → 64.5 cc.
 */
export function presentMeanCc({ heads }: Pick<Start, 'heads'>): number | null {
  const all = heads.flatMap((head) => head.chambersCc)
  return meanOrNull(all)
}

/**
 * What the seat work to come adds, and what the chambers would hold with it if nothing were cut; in cc.
 * Derived: the chambers now plus what the sunk valves add. Example: 64.0 and 0.5 cc of seat work → 64.5 cc.
 */
export function uncutCc(
  question: BenchQuestion,
  start: Start,
): Result<{ readonly presentCc: number; readonly seatsCc: number; readonly finishedCc: number }> {
  const presentCc = presentMeanCc(start)
  if (presentCc === null) return refuse('missing', 'Needs the chamber volume now.', { needs: ['presentCc'] })
  const seats = seatWorkCc(start.casting, question.sinkIn)
  if (!seats.ok) return seats
  return ok({ presentCc, seatsCc: seats.value, finishedCc: presentCc + seats.value })
}

/**
 * Depth at the chamber's centroid that the target takes, in inches, by the rate; below zero when the target is above.
 * Example: 64 to 61 cc at 6 thou per cc, no seat work → 0.018.
 * Derived: cc to take times thou per cc.
 */
export function targetDepthIn(question: BenchQuestion, start: Start): Result<number> {
  const uncut = uncutCc(question, start)
  if (!uncut.ok) return uncut
  if (question.targetCc === null) return refuse('missing', 'Needs the target.', { needs: ['targetCc'] })
  return ok(((uncut.value.finishedCc - question.targetCc) * start.thouPerCc) / 1000)
}
