import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { expectedFinish } from '@/lib/core/finish/expected-finish'
import { dayAt, isOpenOn, offsetAt, openDaysFrom, placeOf, weekdayOf } from '@/lib/core/finish/open-days'
import { queueTimes } from '@/lib/core/finish/queue-times'
import { daysToCome, samplesOf, sorted } from '@/lib/core/finish/samples'
import { drawAt, seedOf } from '@/lib/core/finish/seeded'
import { near, plain } from './any-figure'
import { anyCalendar, anyFinish, anyLengths } from './finish/any-finish'
import { openDaysBetween, wallClock } from '@/lib/core/finish/open-time'
import { routeToCome } from '@/lib/core/finish/route-to-come'
import { noRules } from '@/lib/core/route/rules'
import { stepIds } from '@/lib/core/route/step-ids'
import { holds, holdsFor } from './holds'

const day = fc.constantFrom('2026-03-02', '2026-12-31', '2024-02-29')
const open = fc.tuple(day, anyCalendar).map(([today, calendar]) => openDaysFrom(today, calendar))
const u = fc.double({ min: 0, max: 1, noNaN: true, maxExcluded: true })

describe('when a head is ready', () => {
  holds(expectedFinish, [anyFinish], 60)
  holds(openDaysFrom, [day, anyCalendar], 40)
  holds(offsetAt, [open, plain(0, 800)], 60)
  holds(placeOf, [open, plain(0, 800)], 60)
  holds(dayAt, [open, plain(0, 800)], 60)
  holds(weekdayOf, [day])
  holds(isOpenOn, [anyCalendar, day])
  holds(samplesOf, [fc.array(near(0, 40)), near(0, 20)])
  holds(sorted, [anyLengths])
  holds(daysToCome, [anyLengths, u, near(0, 60)])
  holds(seedOf, [fc.string()])
  holds(drawAt, [fc.nat(), fc.nat(200), fc.nat(40_000)])

  const moment = fc.date({ min: new Date('2020-01-01'), max: new Date('2030-01-01'), noInvalidDate: true })
  const zone = fc.constantFrom('America/Chicago', 'Europe/London', 'Pacific/Auckland', 'UTC')
  holdsFor('wallClock', [zone, moment], (of, at) => wallClock(of)(at))
  holdsFor('queueTimes', [anyLengths, fc.nat(199), fc.nat(60)], (days, round, heads) =>
    queueTimes({ days, own: true }, 'wash').together(round, heads),
  )
  holdsFor('openDaysBetween', [anyCalendar, plain(18_000, 22_000), plain(18_000, 22_000)], (calendar, from, to) =>
    openDaysBetween(calendar)(from, to),
  )
  holdsFor(
    'routeToCome',
    [fc.subarray([...stepIds].filter((id) => id !== 'flow')), fc.boolean()],
    (ordered, used) =>
      routeToCome({ source: 'customer', used, cameAssembled: used, overheated: used, ordered }, noRules).length,
  )

  it('FNV-1a as published', () => {
    // Test vectors of the FNV authors: '', 'a', 'foobar'.
    expect([seedOf(''), seedOf('a'), seedOf('foobar')]).toEqual([0x811c9dc5, 0xe40c292c, 0xbf9cf968])
  })
})
