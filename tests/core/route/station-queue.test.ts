import { expect, it } from 'vitest'
import { queuePlace } from '@/lib/core/route/station-queue'
import type { Whereabouts } from '@/lib/core/route/types'

const placeOf = (state: 'to do' | 'ready' | 'started' | 'do again' | 'done', where: Whereabouts) =>
  queuePlace({ state, waitsFor: [] }, where)

it('a step of a head that is held, away or on order is coming, begun or not', () => {
  for (const where of ['held', 'away', 'on order'] as const) {
    expect(placeOf('ready', where)).toBe('coming')
    expect(placeOf('started', where)).toBe('coming')
  }
})

it('a head that is here counts where its step can be worked on', () => {
  expect(placeOf('ready', 'in house')).toBe('ready')
  expect(placeOf('do again', 'expected')).toBe('ready')
  expect(placeOf('started', 'waiting for parts')).toBe('started')
  expect(queuePlace({ state: 'to do', waitsFor: [{ code: 'plan' }] }, 'in house')).toBe('coming')
})

it('what is settled, or of a head that has left, is in no queue', () => {
  expect(placeOf('done', 'in house')).toBe('')
  expect(placeOf('ready', 'released')).toBe('')
})
