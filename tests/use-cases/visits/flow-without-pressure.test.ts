import { describe, expect, it } from 'vitest'
import { RefusedError } from '@/lib/core/errors'
import { refuseFlowWithoutPressure } from '@/lib/use-cases/visits/flow-without-pressure'

const flowed = { kind: 'flow', point: 'intake@0.300', text: '201', notTaken: null } as const
const fieldsOf = (...entry: Parameters<typeof refuseFlowWithoutPressure>) => {
  try {
    refuseFlowWithoutPressure(...entry)
    return null
  } catch (error) {
    return error instanceof RefusedError ? error.refusal.fields : expect.unreachable()
  }
}

describe('a flow run', () => {
  it('is not kept without its test pressure', () => {
    expect(fieldsOf({ readings: [flowed], conditions: {} })).toEqual({ testPressureInH2O: 'Enter the test pressure.' })
    expect(fieldsOf({ readings: [flowed], conditions: { testPressureInH2O: '28' } })).toBeNull()
  })

  it('is not kept with a condition that is no possible figure', () => {
    const fields = fieldsOf({ readings: [flowed], conditions: { testPressureInH2O: '280', boreFixtureIn: '4.030' } })
    expect(Object.keys(fields ?? {})).toEqual(['testPressureInH2O'])
  })

  it('asks nothing where no flow was read', () => {
    const notTaken = { ...flowed, text: '', notTaken: 'the retainer meets the seal' }
    expect(fieldsOf({ readings: [notTaken], conditions: {} })).toBeNull()
    expect(fieldsOf({ readings: [], conditions: {} })).toBeNull()
  })
})
