import { describe, expect, test } from 'vitest'
import { likelySlip, movePoint } from '@/lib/core/expected/slips'

// The same digits, the point moved by hand.
test.each([
  ['6.39', 1, '63.9'],
  ['63.9', -1, '6.39'],
  ['.014', 1, '.14'],
  ['.014', 2, '1.4'],
  ['.014', 3, '14'],
  ['168', -1, '16.8'],
  ['18.4', 1, '184'],
  ['168', 1, '1680'],
  ['4.5', 3, '4500'],
  ['18', -3, '.018'],
  ['.5', -1, '.05'],
  ['0.050', 1, '.50'],
  ['6,39', 1, '63.9'],
  ['0', 1, '0'],
])('%s by %i is %s', (figure, places, moved) => {
  expect(movePoint(figure, places)).toBe(moved)
})

describe('what was likely meant', () => {
  const near = (least: number, most: number) => (value: number) => value >= least && value <= most
  const typed = (text: string, unit: string, value: number) => ({ text, unit, value })

  test('the decimal point comes before swapped digits', () => {
    // 63.9 by the point, 6.93 by the digits; both would be believed.
    expect(likelySlip(typed('6.39', 'cc', 6.39), 'chamberVolume', near(6.5, 70), [])).toMatchObject({
      kind: 'point',
      text: '63.9',
    })
  })
  test('two digits swapped', () => {
    expect(likelySlip(typed('36.9', 'cc', 36.9), 'chamberVolume', near(62, 66), [])).toEqual({
      kind: 'digits',
      text: '63.9',
      value: 63.9,
    })
  })
  test('the unit typed stays', () => {
    expect(likelySlip(typed('180 thou', 'thou', 0.18), 'cutDepth', near(0.002, 0.0233), [])).toMatchObject({
      kind: 'point',
      text: '18.0 thou',
    })
  })
  test('thou where inches were asked', () => {
    expect(likelySlip(typed('.105 thou', 'thou', 0.000105), 'depth', near(0.09, 0.12), [])).toMatchObject({
      kind: 'thou',
      text: '105 thou',
    })
  })
  test('the figure of another cell', () => {
    const other = typed('1.895', 'in', 1.895)
    expect(likelySlip(typed('1.705', 'in', 1.705), 'height', near(1.88, 1.92), [other])).toMatchObject({
      kind: 'neighbour',
      text: '1.895',
    })
  })
  test('none that would not be believed, and none of a fraction', () => {
    expect(likelySlip(typed('50.0', 'cc', 50), 'chamberVolume', near(62, 66), [])).toBeNull()
    expect(likelySlip(typed('1/64', 'in', 1 / 64), 'depth', near(0.1, 0.2), [])).toBeNull()
  })
})
