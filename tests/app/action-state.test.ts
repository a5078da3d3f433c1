import { describe, expect, it } from 'vitest'
import { actionState, idle } from '@/app/_components/form/action-state'
import type { Refusal } from '@/lib/core/errors'

const refusal: Refusal = {
  code: 'unreadable',
  message: '“64..2” is not a figure.',
  fields: { 'cc|1': '“64..2” is not a figure.', 'cc|2': '“x” is not a figure.' },
}
const refused = actionState(idle, { type: 'refused', refusal })

describe('what was refused', () => {
  it('is gone with the next try, before its answer is there', () => {
    expect(actionState(refused, { type: 'sent' })).toEqual(idle)
  })

  it('gives way to what is refused next', () => {
    const next: Refusal = { code: 'hold', message: 'On hold.' }
    expect(actionState(refused, { type: 'refused', refusal: next })).toEqual({ refusal: next })
  })

  it('stays at the other fields when one is corrected', () => {
    expect(actionState(refused, { type: 'edited', fields: ['cc|1'] }).refusal?.fields).toEqual({
      'cc|2': '“x” is not a figure.',
    })
  })

  it('is gone when the last field is corrected', () => {
    expect(actionState(refused, { type: 'edited', fields: ['cc|1', 'cc|2'] })).toEqual(idle)
  })

  it('stays when another field is changed, or when it is of no field', () => {
    expect(actionState(refused, { type: 'edited', fields: ['cc|3'] })).toBe(refused)
    const held = actionState(idle, { type: 'refused', refusal: { code: 'hold', message: 'On hold.' } })
    expect(actionState(held, { type: 'edited', fields: ['cc|1'] })).toBe(held)
  })
})
