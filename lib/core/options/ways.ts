import type { BenchQuestion, Start, CutOption } from './bench-types'
import { uncutCc } from './bench-depth'
import { cutWay } from './way-cut'
import { leaveWay, openWay } from './way-uncut'
import { inOrder } from './way-order'

/**
 * All ways to reach a target from the heads there are to start from, mildest first: leave it, cut flat, cut at an angle and
 * flat, cut at an angle alone, equalise, open the chamber; from the customer's own head and from each that can be bought.
 *
 * @param question target 1–400 cc, or none and a stop-at limit for a clean-up (0.0005–0.1 in); of a flat-deck head a
 *   thickness of 0.3–12 in, or the stop-at limit; starts as on record
 * @returns one a start and kind, each with depths, cc, all that follows, the steps it makes necessary, days, price, what
 *   rules it out, and why it stands where it stands; none when there is nothing to answer yet
 *
 * Order: what is ruled out comes last; then another casting to be bought, cautions, steps, days, depth, price. Every limit
 * is obeyed: maker's, shop's and class.
 * Example: 64 → 61 cc at 6 thou per cc → "flat, 18 thou" first, the angle cut after it: it goes to a vendor.
 */
export function waysOf(question: BenchQuestion): readonly CutOption[] {
  return inOrder(question.starts.flatMap((start) => waysFrom(question, start)))
}

/** A flat-deck head has no volume to reach: it goes to a thickness, or just until it is flat. */
const flatDeckWays = (question: BenchQuestion, start: Start): CutOption[] => [
  ...(typeof question.thicknessIn === 'number' ? [cutWay(question, start, 'flat')] : []),
  ...(question.stopAtIn === null ? [] : [cutWay(question, start, 'clean-up')]),
]

function waysFrom(question: BenchQuestion, start: Start): CutOption[] {
  if (start.flatDeck) return flatDeckWays(question, start)
  if (question.targetCc === null) {
    return question.stopAtIn === null ? [] : [cutWay(question, start, 'clean-up')]
  }
  const uncut = uncutCc(question, start)
  if (!uncut.ok) return []
  const overCc = uncut.value.finishedCc - question.targetCc
  const toleranceCc = question.shop.settings.ccToleranceCc
  if (overCc < -toleranceCc) return [openWay(question, start, uncut.value.finishedCc)]
  const leave = overCc <= toleranceCc ? [leaveWay(question, start, uncut.value.finishedCc)] : []
  if (overCc <= 0) return leave
  const cuts = (['flat', 'angle-flat', 'angle'] as const).map((kind) => cutWay(question, start, kind))
  const uneven = cuts.some(({ worked }) => worked !== null && worked.plan.outOfTolerance.length > 0)
  return [...leave, ...cuts, ...(uneven ? [cutWay(question, start, 'equalise')] : [])]
}
