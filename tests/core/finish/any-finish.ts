import fc from 'fast-check'
import type { FinishInput, FinishStep, FinishWait } from '@/lib/core/finish/types'
import { queueTimes } from '@/lib/core/finish/queue-times'
import { stations } from '@/lib/core/route/step-ids'

const upTo = (most: number) => fc.double({ min: 0, max: most, noNaN: true })
const promisedOn = fc.option(fc.constantFrom('2026-02-20', '2026-03-05', '2026-04-11'))

/** Days, as a record has them. */
export const anyLengths = fc.array(upTo(30), { minLength: 1, maxLength: 40 })
export const anyStation = fc.constantFrom(...stations)
export const anySamples = fc.record({
  days: anyLengths.map((all) => all.toSorted((a, b) => a - b)),
  own: fc.boolean(),
})

const anyStep: fc.Arbitrary<FinishStep> = fc.oneof(
  fc.record({
    ...{ at: fc.constant('here' as const), stepId: fc.constant('port' as const) },
    ...{ station: fc.option(anyStation), took: anySamples },
  }),
  fc.record({
    ...{ at: fc.constant('vendor' as const), vendor: fc.constant('V'), took: anySamples, promisedOn },
    daysOut: fc.option(fc.nat(40)),
  }),
)

const anyWait: fc.Arbitrary<FinishWait> = fc.record({
  ...{ code: fc.constantFrom('parts' as const, 'answer' as const, 'hold' as const), what: fc.constant('w') },
  ...{ took: anySamples, elapsedDays: upTo(60), promisedOn, beforeStep: fc.nat(4) },
})

export const anyCalendar = fc.record({
  openWeekdays: fc.uniqueArray(fc.nat(6), { minLength: 1 }),
  closedDays: fc.subarray(['2026-03-02', '2026-03-03', '2026-03-06', '2026-04-03']),
})

const anyTimes = fc.tuple(anySamples, anyStation).map(([each, station]) => queueTimes(each, station))

export const anyFinish: fc.Arbitrary<FinishInput> = fc.record({
  ...{ seed: fc.string(), today: fc.constantFrom('2026-03-02', '2026-03-07'), dayPart: upTo(1) },
  ...{ calendar: anyCalendar, steps: fc.array(anyStep, { maxLength: 6 }), elapsedDays: upTo(50) },
  waits: fc.array(anyWait, { maxLength: 3 }),
  queues: fc.dictionary(anyStation, fc.record({ heads: fc.nat(9), times: anyTimes })),
})
