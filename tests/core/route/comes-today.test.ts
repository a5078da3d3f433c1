import { describe, expect, it } from 'vitest'
import { comesToday, type ComingFacts } from '@/lib/core/route/comes-today'
import { keyOf } from '@/lib/core/route/keys'
import type { Wait } from '@/lib/core/route/codes'

const today = '2026-03-04'
const order = { vendor: 'Northgate', number: 'O-0001' }
const step = (ref: 'wash-in' | 'guides' | 'flow-before'): Wait => ({ code: 'step', step: keyOf(ref), label: ref })

const at = (facts: Partial<ComingFacts>): boolean =>
  comesToday({ where: 'in house', waitsFor: [], started: [], arrivesOn: null, partsOn: null, ...facts }, today)

describe('a step that is coming comes today', () => {
  it('when each step it waits for has been started, and not when one of them has not', () => {
    const waitsFor = [step('wash-in'), step('flow-before')]
    expect(at({ waitsFor, started: [keyOf('wash-in'), keyOf('flow-before')] })).toBe(true)
    expect(at({ waitsFor, started: [keyOf('wash-in')] })).toBe(false)
    expect(at({ waitsFor, started: [keyOf('wash-in'), keyOf('flow-after')] })).toBe(false)
    expect(at({ waitsFor, started: [keyOf('guides')] })).toBe(false)
  })

  it('when the head is promised for today, by its supplier or by the vendor that has it', () => {
    for (const [where, wait] of [
      ['on order', { code: 'arrival' }],
      ['away', { code: 'away', order }],
    ] as const) {
      const facts = { where, waitsFor: [wait] }
      expect(at({ ...facts, arrivesOn: today })).toBe(true)
      expect(at({ ...facts, arrivesOn: '2026-03-05' })).toBe(false)
      // Late: nobody knows the day.
      expect(at({ ...facts, arrivesOn: '2026-03-03' })).toBe(false)
      expect(at({ ...facts, arrivesOn: null })).toBe(false)
      // It comes today, and then the wash is first.
      expect(at({ ...facts, arrivesOn: today, waitsFor: [wait, step('wash-in')] })).toBe(false)
      expect(at({ where, waitsFor: [], arrivesOn: null })).toBe(false)
      expect(at({ where: 'in house', waitsFor: [wait], arrivesOn: '2026-03-05' })).toBe(false)
    }
  })

  it('when its parts are promised for today, or the parts that another step of the head waits for', () => {
    const where = 'waiting for parts'
    const waitsFor: Wait[] = [{ code: 'parts', what: 'springs' }]
    expect(at({ where, waitsFor, partsOn: today })).toBe(true)
    expect(at({ where, waitsFor: [], partsOn: today })).toBe(true)
    expect(at({ where, waitsFor, partsOn: '2026-03-05' })).toBe(false)
    expect(at({ where, waitsFor: [], partsOn: null })).toBe(false)
    expect(at({ where: 'in house', waitsFor, partsOn: '2026-03-05' })).toBe(false)
  })

  it('and never with a hold, an open question, no plan, an order that is not sent, or words of an earlier day', () => {
    const known = { started: [keyOf('wash-in')], arrivesOn: today, partsOn: today }
    expect(at({ ...known, where: 'held', waitsFor: [] })).toBe(false)
    expect(at({ ...known, where: 'waiting for an answer', waitsFor: [] })).toBe(false)
    const waits: Wait[] = [
      { code: 'hold' },
      { code: 'plan' },
      { code: 'release' },
      { code: 'send-out', order },
      { code: 'said', text: 'Wash' },
    ]
    for (const wait of waits) expect([wait.code, at({ ...known, waitsFor: [wait] })]).toEqual([wait.code, false])
    expect(at({ ...known, waitsFor: [step('wash-in')] })).toBe(true)
  })
})
