import { describe, expect, it, test } from 'vitest'
import { auditActionOf, auditActions, storedAs, subjectOf } from '@/lib/core/audit/verbs'
import { auditText, plainSentence } from '@/lib/words/audit'

const manner = {
  timeZone: 'America/New_York',
  locale: 'en-US',
  currency: 'USD',
  stepName: (id: string) => ({ chambers: 'Measure chambers', 'flat-cut': 'Flat cut' })[id] ?? '',
}
const say = (action: Parameters<typeof auditText>[0], changes: object = {}, name = '') =>
  auditText(action, name, { ...changes }, manner)

describe('a sentence', () => {
  it.each([
    ['call.log', {}, '', 'Logged a call'],
    ['job.book', {}, '', 'Booked the job'],
    ['price-line.remove', { text: 'Clean-up cut', unitMinor: 9500 }, '', 'Removed price line “Clean-up cut” $95.00'],
    ['price-line.remove', {}, '', 'Removed a price line'],
    ['payment.take', { kind: 'deposit', minor: 20000 }, '', 'Recorded a deposit of $200.00'],
    ['vendor.add', {}, 'Northgate Grinding', 'Added vendor Northgate Grinding'],
    ['hold.open', { reason: 'bent stud' }, '', 'Put the head on hold: bent stud'],
    ['step.tick', { stepId: 'flat-cut', occurrence: '' }, '', 'Ticked Flat cut'],
    ['step.start', {}, 'Flat cut', 'Started Flat cut'],
    ['reading-set.read', { step: 'chambers' }, '', 'Entered readings: Measure chambers'],
    ['reading.correct', { was: '61.2', now: '62.1' }, '', 'Corrected a reading from 61.2 to 62.1'],
    ['reading.correct', { was: '61.2', now: null }, '', 'Withdrew a reading (61.2)'],
    ['outside-order.repromise', { promisedOn: '2026-11-24' }, '', 'Changed the vendor’s promise: Nov 24, 2026'],
    ['pair.plan', { number: 2 }, '', 'Saved cut plan version 2'],
  ] as const)('%s %o', (action, changes, name, sentence) => {
    expect(say(action, changes, name)).toEqual({ sentence, changes: [] })
  })

  it('is there for every action, in its own words, and starts with a verb', () => {
    const plain = auditActions.map(plainSentence)
    expect(new Set(plain).size).toBe(auditActions.length)
    for (const sentence of plain) expect(sentence).toMatch(/^[A-Z][a-z]+ \S/)
  })
})

test('what is not in the sentence stands below it: from and to, units, money, days; no ids', () => {
  const id = '019caed9-4300-7000-8000-0000000000ff'
  const changes = {
    reason: 'deck warped',
    flatIn: 0.018,
    priceMinor: { from: 9500, to: 11000 },
    taxMillionths: 88_750,
    taxBasisPoints: 825,
    rateMillionths: 0,
    basisPoints: { from: 650, to: 1000 },
    promisedOn: { from: null, to: '2026-11-24' },
    castingId: id,
    note: '',
    points: [['cc', '1', '61.2', null]],
  }
  expect(say('job.change', changes).changes).toEqual([
    'reason: deck warped',
    'flat part: 0.0180 in',
    'price: from $95.00 to $110.00',
    'tax: 8.875 %',
    'tax: 8.25 %',
    'rate: 0 %',
    'rate: from 6.5 % to 10 %',
    'promised for: from none to Nov 24, 2026',
    'readings: Chamber volume 1: 61.2',
  ])
})

describe('what was written before every action was subject.verb', () => {
  it.each([
    ['price.end', 'price-line', {}, 'price-line.remove'],
    ['correct', 'reading', {}, 'reading.correct'],
    ['correct', 'casting', {}, 'casting.correct-flow'],
    ['supply.order', 'visit', {}, 'visit.order-head'],
    ['supply.order', 'supply-order', {}, 'supply-order.order'],
    ['tag', 'head', { was: null, now: 'T-0402' }, 'head.tag'],
    ['tag', 'head', { was: 'T-0402', now: null }, 'head.untag'],
    ['job.book', 'job', {}, 'job.book'],
    ['unheard-of', 'job', {}, null],
  ])('%s of a %s', (action, subject, changes, now) => {
    expect(auditActionOf({ action, subject, changes })).toBe(now)
  })

  it('is found by what it is called now', () => {
    expect(storedAs('price-line.remove')).toEqual(['price-line.remove', 'price.end'])
  })
})

test('the subject is what stands before the dot', () => {
  expect(subjectOf('price-line.remove')).toBe('price-line')
})
