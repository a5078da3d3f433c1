import { describe, expect, it } from 'vitest'
import { expectedFinish } from '@/lib/core/finish/expected-finish'
import { queueTimes } from '@/lib/core/finish/queue-times'
import { samplesOf } from '@/lib/core/finish/samples'
import type { FinishStep } from '@/lib/core/finish/types'
import { must } from '@/lib/core/errors'
import { stations } from '@/lib/core/route/step-ids'
import { addDays, daysBetween } from '@/lib/core/shop/calendar'
import { usualCalendar } from '@/lib/core/shop/open-calendar'
import { calendarOf, inventShop, type InventedShop } from './invented-shop'

const shops = 500
/** A Monday. */
const dayZero = '2024-01-01'

/** What the shop would know of the head on that day, as the app puts it together. */
function expected(shop: InventedShop) {
  const { at, past, head } = shop
  const newest = past.toReversed()
  const today = addDays(dayZero, Math.floor(calendarOf(at)))
  const steps = head.left.map((step, place): FinishStep => {
    const station = shop.route[step]
    if (station === null || station === undefined) {
      const daysOut = place === 0 ? Math.round(calendarOf(at) - calendarOf(head.since)) : null
      return { at: 'vendor', vendor: 'V', took: samplesOf(shop.vendorDays, 5), promisedOn: null, daysOut }
    }
    const took = newest.filter((one) => one.step === step).map(({ readyAt, doneAt }) => doneAt - readyAt)
    return { at: 'here', stepId: 'wash-in', station: stations[station] ?? null, took: samplesOf(took, 0.4) }
  })
  const queues = Object.fromEntries(
    shop.ahead.map((heads, station) => {
      const each = newest
        .filter(({ step }) => shop.route[step] === station)
        .map(({ readyAt, freeAt, doneAt }) => doneAt - Math.max(readyAt, freeAt))
      const at = stations[station] ?? 'outside'
      return [at, { heads, times: queueTimes(samplesOf(each, 0.4), at) }]
    }),
  )
  const asked = head.askedAt
  const elapsed = calendarOf(at) - calendarOf(asked ?? at)
  return must(
    expectedFinish({
      ...{ seed: head.id, today, dayPart: at % 1, calendar: usualCalendar, steps, queues },
      elapsedDays: asked === null && steps[0]?.at === 'here' ? at - head.since : 0,
      waits:
        asked === null
          ? []
          : [
              {
                ...{ code: 'answer', what: 'a crack', took: samplesOf(shop.answerDays, 2), elapsedDays: elapsed },
                ...{ promisedOn: null, beforeStep: 0 },
              },
            ],
    }),
  )
}

const dayOf = (place: number) => addDays(dayZero, Math.floor(calendarOf(place)))

describe('five hundred invented shops', () => {
  const outcomes = Array.from({ length: shops }, (_, number) => {
    const shop = inventShop(number)
    // Work that fills a day to its end is done on that day.
    return { ...expected(shop), doneOn: dayOf(shop.head.doneAt - 1e-9), seenOn: dayOf(shop.at) }
  })
  type Outcome = (typeof outcomes)[number]
  const share = (isSo: (one: Outcome) => boolean): number => outcomes.filter(isSo).length / shops
  const mean = (days: (one: Outcome) => number): string =>
    (outcomes.reduce((sum, one) => sum + days(one), 0) / shops).toFixed(1)

  it('85 to 95 of a hundred heads are done by the nine-of-ten day', () => {
    const byNine = share(({ doneOn, nineOfTenOn }) => doneOn <= nineOfTenOn)
    const byMiddle = share(({ doneOn, middleOn }) => doneOn <= middleOn)
    process.stdout.write(
      `Done by the nine-of-ten day: ${(byNine * 100).toFixed(1)} %; by the middle day: ${(byMiddle * 100).toFixed(1)} %. ` +
        `Done after ${mean(({ seenOn, doneOn }) => daysBetween(seenOn, doneOn))} days, nine of ten expected within ` +
        `${mean(({ seenOn, nineOfTenOn }) => daysBetween(seenOn, nineOfTenOn))}.\n`,
    )
    expect(byNine).toBeGreaterThanOrEqual(0.85)
    expect(byNine).toBeLessThanOrEqual(0.95)
    expect(byMiddle).toBeGreaterThanOrEqual(0.45)
    expect(byMiddle).toBeLessThanOrEqual(0.7)
  })

  it('speaks from the shops’ own record', () => {
    expect(share(({ from }) => from === 'own')).toBeGreaterThan(0.9)
  })
})
