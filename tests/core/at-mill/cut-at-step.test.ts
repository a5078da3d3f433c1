import { describe, expect, it } from 'vitest'
import { checkCutAt, marksFound, type CutAgainst } from '@/lib/core/at-mill/cut-at-step'
import { cutSoFarThou } from '@/lib/core/at-mill/state-at-mill'
import type { CutFacts } from '@/lib/core/rate/shop-cut'
import type { OrderFacts } from '@/lib/core/route/types'

const order: OrderFacts = {
  orderId: 'one',
  number: '1',
  vendor: 'A vendor',
  scope: ['angle-cut'],
  angleIn: 0.0611,
  flatIn: 0.014,
  sentSeq: 2,
  receivedSeq: 6,
  confirmed: ['angle-cut'],
  seatsIn: false,
}
const thickness = (stepId: 'thickness' | 'arrival-figures', point: string, value: number, seq: number) => ({
  step: { stepId, occurrence: '', orderId: stepId === 'thickness' ? null : 'one' },
  kind: 'thickness' as const,
  point,
  value,
  text: String(value),
  notTaken: null,
  id: `${stepId} ${point}`,
  seq,
})
const cutFacts = (after: readonly [intake: number, exhaust: number] | null): CutFacts => ({
  readings: [1, 2].flatMap((end) => [
    thickness('thickness', `intake-${end}`, 4.5, 1),
    thickness('thickness', `exhaust-${end}`, 4.5, 1),
    ...(after
      ? [
          thickness('arrival-figures', `intake-${end}`, after[0], 7),
          thickness('arrival-figures', `exhaust-${end}`, after[1], 7),
        ]
      : []),
  ]),
  events: [],
  orders: [order],
  deck: { deepEdge: 'exhaust', milledWidthIn: 7, deckLengthIn: 20, inset: { edgeIn: 0, endIn: 0 } },
  burette: { divisionCc: 0.2, repeatabilityCc: 0.3 },
})
const against: CutAgainst = {
  wanted: { orders: [order], plan: null, kind: 'angle', milledWidthIn: 7 },
  deepEdge: 'exhaust',
  marks: null,
  toleranceIn: 0.002,
}
const arrival = { stepId: 'arrival-figures', orderId: 'one' } as const

describe('a cut on arrival', () => {
  // All corners lost 0.015: 0.001 more than the 0.014 of the order; of the angle part 0.0611 is short.
  it('is held against what the order asked for', () => {
    const checked = checkCutAt(cutFacts([4.485, 4.485]), arrival, against)
    expect(checked).toMatchObject({ by: 'corners', deepAtOtherEdge: false, marksOtherEdge: false })
    const [flat, angle] = checked?.rows ?? []
    expect(flat?.wanted).toMatchObject({ value: 0.014, within: true })
    expect(flat?.wanted?.off).toBeCloseTo(0.001, 9)
    expect(angle?.wanted).toMatchObject({ value: 0.0611, within: false })
  })

  it('lies deep at the wrong edge', () => {
    expect(checkCutAt(cutFacts([4.43, 4.49]), arrival, against)?.deepAtOtherEdge).toBe(true)
    // 0.001 deeper at the intake edge is within 0.002.
    expect(checkCutAt(cutFacts([4.485, 4.486]), arrival, against)?.deepAtOtherEdge).toBe(false)
  })

  it('bears marks that name the other edge', () => {
    const marked = (text: string) =>
      checkCutAt(cutFacts([4.485, 4.485]), arrival, { ...against, readings: marksFound(['none', text]).readings })
    expect(marked('20 flat, 63 at the intake edge')?.marksOtherEdge).toBe(true)
    expect(marked('20 flat, 63 at the exhaust edge')?.marksOtherEdge).toBe(false)
    expect(marked('20 + 63')?.marksOtherEdge).toBe(false)
  })

  it('is not known before the corners are read', () => {
    expect(checkCutAt(cutFacts(null), arrival, against)).toBeNull()
  })
})

it('a vendor’s cut that nobody measured goes by plan and order', () => {
  const plan = { depthAtCentroidIn: 0.06, flatIn: 0.02 }
  // 60 − 20 of the angle, 14 flat by the order, 5 cut here.
  expect(cutSoFarThou({ cuts: cutFacts(null), plan, centroidShare: 0.6 }, 5)).toBeCloseTo(59, 9)
  // Not confirmed: the 14 were not taken.
  const unconfirmed = { ...cutFacts(null), orders: [{ ...order, confirmed: [] }] }
  expect(cutSoFarThou({ cuts: unconfirmed, plan, centroidShare: 0.6 }, 5)).toBeCloseTo(45, 9)
})

it('marks are those of the first text that gives figures', () => {
  expect(marksFound(['None', 'by eye', '20 + 63'])).toMatchObject({ read: { flatIn: 0.02, angleIn: 0.063 } })
  expect(marksFound(['', 'by eye'])).toEqual({ read: null, readings: [], text: 'by eye' })
})
