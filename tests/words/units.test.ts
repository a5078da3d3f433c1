import { expect, it } from 'vitest'
import { quantities } from '@/lib/core/units/quantities'
import { unitWords } from '@/lib/words/units'

it('every unit that a keypad offers has words', () => {
  const units = new Set(Object.values(quantities).flatMap(({ keypadUnits }) => keypadUnits))
  expect(units.size).toBeGreaterThan(10)
  for (const unit of units) {
    expect([unit, unitWords(unit)]).not.toEqual([unit, unit])
    expect(unitWords(unit)).toMatch(/^[A-Za-z][a-zA-Z ]+$/)
  }
  expect(['thou', 'in', 'cc'].map(unitWords)).toEqual(['thousandths of an inch', 'inches', 'cubic centimetres'])
})
