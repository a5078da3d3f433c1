import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { expectedFinish } from '@/lib/core/finish/expected-finish'
import { queueTimes } from '@/lib/core/finish/queue-times'
import { dayAt, isOpenOn, openDaysFrom, placeOf } from '@/lib/core/finish/open-days'
import { daysToCome, samplesOf } from '@/lib/core/finish/samples'
import { drawAt } from '@/lib/core/finish/seeded'
import type { FinishInput, FinishStep, FinishWait } from '@/lib/core/finish/types'
import { must } from '@/lib/core/errors'
import { stations } from '@/lib/core/route/step-ids'
import { daysBetween } from '@/lib/core/shop/calendar'
import { usualCalendar } from '@/lib/core/shop/open-calendar'
import { anyCalendar, anyFinish, anyLengths, anySamples, anyStation } from './any-finish'

const monday = '2026-03-02'
const own = (...days: number[]) => ({ days, own: true })
const step = (days: readonly number[], station: (typeof stations)[number] | null = null): FinishStep => ({
  ...{ at: 'here', stepId: 'wash-in', station, took: { days, own: true } },
})
const nothing: FinishInput = {
  ...{
    seed: 'a',
    today: monday,
    dayPart: 0,
    calendar: usualCalendar,
    steps: [],
    elapsedDays: 0,
    waits: [],
    queues: {},
  },
}
const finish = (input: Partial<FinishInput>) => must(expectedFinish({ ...nothing, ...input }))

describe('one head by hand', () => {
  /*
   * Monday March 2, at noon (0.5). Two heads before it at the mill, 0.5 working days each; its own work there 1 day.
   *   the two are done: 0.5 + 2 × 0.5 = 1.5 (Tuesday noon); its own: 1.5 + 1 = 2.5 → Wednesday noon.
   * Sent on Wednesday March 4; the vendor takes 7 calendar days → Wednesday March 11.
   * From the beginning of Wednesday (7 working days on: Mar 2–6 is 5, Mar 9 and 10 two more), seats 2 days → 9.0:
   *   the ninth working day is Thursday March 12, done at its end.
   * Closed on Thursday March 12 → Friday March 13.
   */
  const head: Partial<FinishInput> = {
    dayPart: 0.5,
    steps: [
      step([1], 'deck-mill'),
      { at: 'vendor', vendor: 'Angle Works', took: own(7), promisedOn: null, daysOut: null },
      step([2], 'seat-machine'),
    ],
    queues: { 'deck-mill': { heads: 2, times: queueTimes(own(0.5), 'deck-mill') } },
  }

  it('mill behind two others, a vendor, then seats', () => {
    // Its own work at the mill is drawn from what one takes there: half a day, so 1.5 + 0.5 = 2.0 → sent Tuesday the 3rd,
    // and the usual 1 day (0.5 + 1 = 1.5) is over before. Back on Tuesday the 10th: 6 working days on, + 2 → Wednesday 11.
    expect(finish(head)).toEqual({
      middleOn: '2026-03-11',
      nineOfTenOn: '2026-03-11',
      longest: { code: 'vendor', vendor: 'Angle Works', days: 7 },
      from: 'own',
    })
  })

  it('its own work comes after the queue', () => {
    // Two of half a day each are done at the end of Monday; its own half day after that: Tuesday.
    const queues = { 'deck-mill': { heads: 2, times: queueTimes(own(0.5), 'deck-mill') } }
    const { middleOn, longest } = finish({ steps: [step([0.1], 'deck-mill')], queues })
    expect(middleOn).toBe('2026-03-03')
    // 1.5 days in all, of which its usual tenth of a day is its own.
    expect(longest).toEqual({ code: 'queue', station: 'deck-mill', heads: 2, days: 1.4 })
  })

  it('with a holiday in it', () => {
    const calendar = { ...usualCalendar, closedDays: ['2026-03-11'] }
    expect(finish({ ...head, calendar }).middleOn).toBe('2026-03-12')
  })

  it('the vendor’s day, where it is later', () => {
    const [mill, , seats] = head.steps ?? []
    const vendor: FinishStep = { at: 'vendor', vendor: 'A', took: own(7), promisedOn: '2026-03-16', daysOut: 1 }
    // Back on Monday the 16th: ten working days on, + 2 → the end of the twelfth, Tuesday the 17th.
    if (mill && seats) expect(finish({ ...head, steps: [mill, vendor, seats] }).middleOn).toBe('2026-03-17')
  })

  it('a question and parts: the steps behind them wait', () => {
    const answer: FinishWait = {
      ...{ code: 'answer', what: 'crack', took: own(3), elapsedDays: 1, promisedOn: null, beforeStep: 0 },
    }
    const parts: FinishWait = {
      ...{ code: 'parts', what: 'valves', took: own(9), elapsedDays: 0, promisedOn: '2026-03-09', beforeStep: 1 },
    }
    // The answer takes 3 days, 1 is over: Wednesday the 4th. One day of work: its end. The valves come on Monday the 9th,
    // and then one day more: the end of Monday.
    const { middleOn, longest } = finish({ steps: [step([1]), step([1])], waits: [answer, parts] })
    expect(middleOn).toBe('2026-03-09')
    // From Monday to Wednesday two working days; from Wednesday evening to Monday morning two as well: the first counts.
    expect(longest).toEqual({ code: 'answer', what: 'crack', days: 2 })
  })

  it('the middle and nine of ten of one draw', () => {
    // Ten equally likely lengths 1…10: half are done by the end of the 5th working day, nine of ten by the 9th. 200 rounds
    // miss these shares by 0.035 and 0.021 (one deviation), so a day either way is allowed.
    const { middleOn, nineOfTenOn } = finish({ steps: [step([1, 2, 3, 4, 5, 6, 7, 8, 9, 10])] })
    expect(['2026-03-05', '2026-03-06', '2026-03-09']).toContain(middleOn) // 4th, 5th, 6th working day
    expect(['2026-03-11', '2026-03-12', '2026-03-13']).toContain(nineOfTenOn) // 8th, 9th, 10th
  })

  it('nothing left to do: today, or the next open day', () => {
    expect(finish({}).nineOfTenOn).toBe(monday)
    expect(finish({ today: '2026-03-07' }).middleOn).toBe('2026-03-09')
    expect(finish({}).longest).toEqual({ code: 'none' })
  })

  it('a shop that is never open is refused', () => {
    const calendar = { openWeekdays: [], closedDays: [] }
    expect(expectedFinish({ ...nothing, calendar })).toMatchObject({ ok: false, refusal: { code: 'out-of-range' } })
  })
})

describe('samples', () => {
  it('a shop with fewer than eight of its own goes by the setting', () => {
    expect(samplesOf([1, 1, 1], 2)).toEqual({ days: [1, 1.2, 1.4, 1.6, 1.8, 2, 2.3, 2.6, 3.2, 4], own: false })
    expect(samplesOf([3, 1, 2, 5, 4, 8, 7, 6], 2)).toEqual({ days: [1, 2, 3, 4, 5, 6, 7, 8], own: true })
  })

  it('the newest forty count', () => {
    const days = [...Array.from({ length: 40 }, () => 1), ...Array.from({ length: 40 }, () => 9)]
    expect(samplesOf(days, 2).days).toEqual(Array.from({ length: 40 }, () => 1))
  })

  it('what has lasted for four days already lasts one or five more of 2, 5, 9', () => {
    expect([0, 0.49, 0.5, 0.99].map((u) => daysToCome([2, 5, 9], u, 4))).toEqual([1, 1, 5, 5])
    expect(daysToCome([2, 5, 9], 0.5, 20)).toBe(5)
  })

  it('draws are even', () => {
    // Of 10,000 even draws each tenth has 1,000, with a deviation of 30: 150 is five of them.
    const tenths = Array.from({ length: 10 }, () => 0)
    for (let round = 0; round < 200; round++) {
      for (let draw = 0; draw < 50; draw++) tenths[Math.floor(drawAt(77, round, draw) * 10)]! += 1
    }
    for (const count of tenths) expect(Math.abs(count - 1000)).toBeLessThan(150)
  })
})

describe('whatever the head', () => {
  const runs = { numRuns: 60 }

  it('is on an open day, not before today, the middle first; the same again', () => {
    fc.assert(
      fc.property(anyFinish, (input) => {
        const found = must(expectedFinish(input))
        expect(found.middleOn >= input.today && found.middleOn <= found.nineOfTenOn).toBe(true)
        expect(isOpenOn(input.calendar, found.middleOn) && isOpenOn(input.calendar, found.nineOfTenOn)).toBe(true)
        expect(must(expectedFinish(input))).toEqual(found)
      }),
      runs,
    )
  })

  it('is no sooner with one head more before it', () => {
    fc.assert(
      fc.property(anyFinish, anyStation, anySamples, (input, at, each) => {
        const now = { heads: 1, times: queueTimes(each, at), ...input.queues[at] }
        const more = { ...input, queues: { ...input.queues, [at]: { ...now, heads: now.heads + 1 } } }
        const [few, many] = [{ ...input, queues: { ...input.queues, [at]: now } }, more].map((one) =>
          must(expectedFinish(one)),
        )
        expect(
          (many?.middleOn ?? '') >= (few?.middleOn ?? '') && (many?.nineOfTenOn ?? '') >= (few?.nineOfTenOn ?? ''),
        ).toBe(true)
      }),
      runs,
    )
  })

  it('does not hang on the order in which the record was kept', () => {
    fc.assert(
      fc.property(anyLengths, anyLengths, (kept, others) => {
        const all = [...kept, ...others].slice(0, 40)
        expect(samplesOf(all, 1)).toEqual(samplesOf(all.toReversed(), 1))
      }),
      runs,
    )
  })

  it('open time and the calendar lead back to each other', () => {
    fc.assert(
      fc.property(anyCalendar, fc.double({ min: 0.01, max: 100, noNaN: true }), (of, place) => {
        const open = openDaysFrom(monday, of)
        const day = dayAt(open, place)
        const begins = placeOf(open, daysBetween(monday, day))
        expect(isOpenOn(of, day)).toBe(true)
        expect(begins).toBeLessThan(place)
        expect(place - begins).toBeLessThanOrEqual(1 + 1e-8)
      }),
      runs,
    )
  })
})
