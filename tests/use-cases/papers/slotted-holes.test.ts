import { describe, expect, it } from 'vitest'
import { holesNamed, saysNone } from '@/lib/dossier/slotted-holes'

const labels = ['1', '2', '3', '4', '5', '6', '7', '8', '9', '10']
const named = (note: string, of: readonly string[] = labels) => [...holesNamed(note, of)]

describe('the holes that a note of slotted holes names', () => {
  it.each([
    ['6 7 8 9 10, outward', ['6', '7', '8', '9', '10']],
    ['2, 4 and 6', ['2', '4', '6']],
    ['8-10', ['8', '9', '10']],
    ['1 to 3; 7', ['1', '2', '3', '7']],
    ['all, toward the intake edge', labels],
    ['every hole', labels],
    ['none', []],
    ['None.', []],
    ['', []],
    ['the outer ones', []],
    ['12', []],
    ['1 to 999999999', labels],
  ])('%j', (note, holes) => {
    expect(named(note)).toEqual(holes)
  })

  it('goes by the record’s own names', () => {
    expect(named('A2 and b1', ['A1', 'A2', 'B1'])).toEqual(['A2', 'B1'])
    expect(named('the long ones: L1', ['L1', 'S1'])).toEqual(['L1'])
  })

  it('knows no from a note that begins with it', () => {
    expect(saysNone(' none ')).toBe(true)
    expect(saysNone('none but 3')).toBe(false)
    expect(named('none but 3')).toEqual(['3'])
  })
})
