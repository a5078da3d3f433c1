import { expect, it } from 'vitest'
import { asLastRead } from '@/lib/core/at-mill/as-last-read'
import type { CutFacts } from '@/lib/core/rate/shop-cut'
import { isMeasurable } from '@/lib/core/units/least-measured'

const reading = (seq: number, kind: string, value: number | null) =>
  ({ seq, kind, value }) as CutFacts['readings'][number]

it('a depth that came after the last cc is left out, one before it counts', () => {
  const all = [reading(1, 'cut-depth', 0.012), reading(2, 'cc', 61.5), reading(3, 'cut-depth', 0.018)]
  expect(asLastRead(all).map(({ seq }) => seq)).toEqual([1, 2])
  // A chamber that was not taken says nothing of the depth before it.
  expect(asLastRead([...all, reading(4, 'cc', null)]).map(({ seq }) => seq)).toEqual([1, 2, 4])
})

it('half a thou is measured, a tenth is not, either way', () => {
  expect([0.0153, 0.0005, -0.0005, 0.0001, 0].map(isMeasurable)).toEqual([true, true, true, false, false])
})
