import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { fromCell, press, toCell, turnUnit, type Key } from '@/app/_components/keypad/figure-text'

describe('what stands in a figure cell and what goes up', () => {
  it('sends a figure in the quantity’s own unit bare, and any other with its unit', () => {
    expect(fromCell('0.018', 'in', 'in')).toBe('0.018')
    expect(fromCell('18', 'thou', 'in')).toBe('18 thou')
    expect(fromCell('', 'thou', 'in')).toBe('')
  })

  it('leaves a unit that was typed alone', () => {
    expect(fromCell('0.5 mm', 'thou', 'in')).toBe('0.5 mm')
    expect(toCell('0.5 mm', 'thou', 'in')).toBe('0.5 mm')
  })

  it('shows a figure of another unit with that unit, so that it never reads as the one beside the cell', () => {
    expect(toCell('18 thou', 'thou', 'in')).toBe('18')
    expect(toCell('18 thou', 'in', 'in')).toBe('18 thou')
    expect(toCell('0.018', 'thou', 'in')).toBe('0.018 in')
  })

  it('keeps whatever is typed, character for character, in either unit', () => {
    const typed = fc.stringMatching(/^[0-9.,/ −-]{1,12}$/)
    fc.assert(
      fc.property(typed, fc.constantFrom('in', 'thou', 'mm'), (text, shown) => {
        expect(toCell(fromCell(text, shown, 'in'), shown, 'in')).toBe(text)
      }),
    )
  })

  it('means the same figure in the next unit when the unit is turned after typing', () => {
    expect(turnUnit('18', 'in', 'thou', 'in')).toBe('18 thou')
    expect(turnUnit('18 thou', 'thou', 'mm', 'in')).toBe('18 mm')
    expect(turnUnit('18 mm', 'mm', 'in', 'in')).toBe('18')
    expect(turnUnit('', 'in', 'thou', 'in')).toBe('')
  })

  it('spells figures, signs and fractions with its keys', () => {
    const spell = (keys: readonly Key[]) => keys.reduce(press, '')
    expect(spell(['1', '−', '7', '/', '8'])).toBe('1-7/8')
    expect(spell(['−', '.', '0', '1', '0'])).toBe('−.010')
    expect(spell(['−', '−', '5'])).toBe('5')
    expect(spell(['1', '2', 'back', '3'])).toBe('13')
    expect(spell(['back'])).toBe('')
  })
})
