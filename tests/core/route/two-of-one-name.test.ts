import { expect, it } from 'vitest'
import { computeRoute } from '@/lib/core/route/compute-route'
import { fixesOf } from '@/lib/core/route/fixes'
import { keyOf } from '@/lib/core/route/keys'
import { arrival, order, Visit } from './visit'

it('each of two arrivals with one label is led to by its own key', () => {
  const visit = Visit.of({ targetCc: 58, ordered: ['weld', 'straighten'] })
  visit
    .sends(order('A', ['weld']))
    .receives('A', [])
    .sends(order('B', ['straighten']))
    .receives('B', [])
  const waits = computeRoute(visit.facts).find(({ stepId }) => stepId === 'straighten')?.waitsFor ?? []
  expect(waits).toContainEqual({
    code: 'step',
    step: arrival('arrival-figures', 'B'),
    label: expect.any(String),
  })
  const places = fixesOf(visit.facts, keyOf('straighten')).map(({ place }) => place)
  expect(places).toContainEqual({ kind: 'step', step: arrival('arrival-figures', 'B'), station: 'measuring-bench' })
})
