import { expect, test } from 'vitest'
import { computeRoute } from '@/lib/core/route/compute-route'
import type { Rework } from '@/lib/core/route/head-marks'
import { stepDetail } from '@/lib/data/stored/route-step'
import { orderText, reasonText, waitText, whyText } from '@/lib/words/route'
import { Visit } from '../core/route/visit'

test('every step of a route comes back as it was stored', () => {
  for (const step of computeRoute(Visit.of({ targetCc: 58, used: true, ordered: ['port'] }).facts)) {
    const { stepId, occurrence, orderId, label, station, state, ...detail } = step
    expect(
      stepDetail.read(stepDetail.write(detail), ''),
      [stepId, occurrence, orderId, label, station, state].join(),
    ).toEqual(detail)
  }
})

test('a row that was stored with sentences is still read', () => {
  const earlier = {
    why: 'a used head',
    reason: '',
    isNew: false,
    waitsFor: ['Check in', 'the cut plan'],
    owes: [],
    outside: false,
    doneSeq: null,
    byVendor: '',
  }
  const read = stepDetail.read(JSON.stringify(earlier), '')
  expect([whyText(read.why), reasonText(read.reason), read.waitsFor.map(waitText)]).toEqual([
    'a used head',
    '',
    ['Check in', 'the cut plan'],
  ])
  expect([read.owes, read.byVendor]).toEqual([[], null])
})

test('a row that was stored with vendor and number in one text says the same', () => {
  const earlier = {
    shape: 2,
    why: null,
    reason: null,
    isNew: false,
    waitsFor: [],
    owes: [],
    outside: false,
    doneSeq: 4,
  }
  const { byVendor } = stepDetail.read(JSON.stringify({ ...earlier, byVendor: 'Tarn Grinding, order O-0001' }), '')
  expect(byVendor && orderText(byVendor)).toBe('Tarn Grinding, order O-0001')
  expect(stepDetail.read(JSON.stringify({ ...earlier, byVendor: '' }), '').byVendor).toBeNull()
})

test('what is to be put right comes back as it was stored', () => {
  const [step] = computeRoute(Visit.of({}).facts)
  if (!step) throw new Error('A route has steps.')
  const { stepId, occurrence, orderId, label, station, state, ...detail } = step
  const rework: readonly Rework[] = [
    { from: 'owner', text: 'weld it' },
    { from: 'vendor', order: { vendor: 'Tarn Grinding', number: 'O-0001' }, text: 'porous' },
  ]
  const read = stepDetail.read(
    stepDetail.write({ ...detail, rework }),
    [stepId, occurrence, orderId, label, station, state].join(),
  )
  expect(read.rework).toEqual(rework)
})
