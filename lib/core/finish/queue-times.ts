import type { Station } from '../route/step-ids'
import { daysToCome, type Samples } from './samples'
import { drawAt, seedOf } from './seeded'

/** What the heads of a station's queue take. */
export type QueueTimes = {
  readonly each: Samples
  /** Working days that the first so many take together in a round. */
  readonly together: (round: number, heads: number) => number
}

/**
 * What each head of a station's queue takes, and so many of them together. Drawn once, for all heads that stand behind
 * them: two hundred rounds of a long queue, for every head of a page, would keep the shop's machine busy for a second.
 *
 * @param each 0 or more working days a head
 * @returns `together` for rounds from 0 on and 0 or more heads
 *
 * Example: each takes half a day → two take one day in every round. Derived: sums of draws that hang on station, round and
 * place in the queue alone, so that one head more moves no other draw.
 */
export function queueTimes(each: Samples, station: Station): QueueTimes {
  const seed = seedOf(station)
  const sums: number[][] = []
  return {
    each,
    together: (round, heads) => {
      const ofRound = (sums[round] ??= [0])
      for (let head = ofRound.length; head <= heads; head++) {
        ofRound.push((ofRound[head - 1] ?? 0) + daysToCome(each.days, drawAt(seed, round, head), 0))
      }
      return ofRound[Math.max(0, heads)] ?? 0
    },
  }
}
