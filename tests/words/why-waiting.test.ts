import { describe, expect, it } from 'vitest'
import { noRules } from '@/lib/core/route/rules'
import { whyWaiting, type MayWait } from '@/lib/core/route/why-waiting'
import { afterWhereText, whyWaitingText } from '@/lib/words/why-waiting'

const from = { vendor: 'Peel Valley Crack Repair', promisedOn: '2026-03-12' }
/** Everything that can hold a head up at once: where it is says which of it does. */
const all: Omit<MayWait, 'whereabouts'> = {
  steps: [{ label: 'Chambers', station: 'measuring-bench' }],
  holds: [{ reason: 'bent stud' }],
  waits: [{ what: 'springs', promisedOn: null }],
  findings: [{ what: 'crack at 3' }],
  supply: [from],
  outside: [from],
}
const none = { steps: [], holds: [], waits: [], findings: [], supply: [], outside: [] }

describe('why a head is not further on', () => {
  it.each([
    ['expected', all, { code: 'not-here' }, 'not here yet', ', not here yet'],
    ['on order', none, { code: 'not-ordered' }, 'not yet ordered', ', not yet ordered'],
    [
      'on order',
      all,
      { code: 'on-order', ...from },
      'on order from Peel Valley Crack Repair, promised Mar 12, 2026',
      ' from Peel Valley Crack Repair, promised Mar 12, 2026',
    ],
    ['held', all, { code: 'held', reason: 'bent stud' }, 'held: bent stud', ': bent stud'],
    [
      'away',
      { ...none, outside: [{ ...from, promisedOn: null }] },
      { code: 'away', vendor: from.vendor, promisedOn: null },
      'away at Peel Valley Crack Repair, no promise',
      ' at Peel Valley Crack Repair, no promise',
    ],
    [
      'waiting for parts',
      all,
      { code: 'parts', what: 'springs', promisedOn: null },
      'waiting for springs, no promise',
      ', waiting for springs, no promise',
    ],
    [
      'waiting for an answer',
      all,
      { code: 'answer', what: 'crack at 3' },
      'waiting for the customer’s answer: crack at 3',
      ', waiting for the customer’s answer: crack at 3',
    ],
    [
      'in house',
      all,
      { code: 'step', label: 'Chambers', station: 'measuring-bench' },
      'Chambers (measuring bench)',
      ', Chambers (measuring bench)',
    ],
    ['held', none, { code: 'place', whereabouts: 'held' }, 'held', ''],
    ['released', all, { code: 'place', whereabouts: 'released' }, 'released', ''],
  ] as const)('%s', (whereabouts, visit, code, sentence, after) => {
    const why = whyWaiting({ ...visit, whereabouts })
    expect(why).toEqual(code)
    expect([whyWaitingText(why, noRules, 'en-US'), afterWhereText(why, noRules, 'en-US')]).toEqual([sentence, after])
  })
})
