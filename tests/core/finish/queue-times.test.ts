import { describe, expect, it } from 'vitest'
import { queueTimes } from '@/lib/core/finish/queue-times'

describe('heads of a queue', () => {
  it('of half a day each take one day together, two of them, in every round', () => {
    const { together } = queueTimes({ days: [0.5], own: true }, 'deck-mill')
    expect([0, 1, 7, 199].map((round) => together(round, 2))).toEqual([1, 1, 1, 1])
    expect(together(3, 0)).toBe(0)
  })

  it('take the same whoever asks first, and one more moves none before it', () => {
    const each = { days: [0.25, 1, 2], own: true }
    const [long, short] = [queueTimes(each, 'wash'), queueTimes(each, 'wash')]
    const all = [9, 4, 1].map((heads) => long.together(5, heads))
    expect([1, 4, 9].map((heads) => short.together(5, heads))).toEqual(all.toReversed())
    for (let heads = 1; heads < 9; heads++) {
      expect(each.days).toContain(long.together(5, heads) - long.together(5, heads - 1))
    }
  })

  it('are drawn evenly from what heads take: the mean of many rounds is the mean of the samples', () => {
    const { together } = queueTimes({ days: [0, 1, 2], own: true }, 'port-bench')
    const rounds = Array.from({ length: 200 }, (_, round) => together(round, 30))
    // 30 draws of mean 1 and variance 2/3: over 200 rounds the mean is off by less than four times √(30·2/3/200) = 1.3.
    expect(Math.abs(rounds.reduce((sum, days) => sum + days, 0) / 200 - 30)).toBeLessThan(1.3)
  })
})
