import { expect, test } from 'vitest'
import { typedFigure } from '@/lib/core/units/typed-figure'

test.each([
  ['0.3410', 'in', '0.3410 in'],
  ['18 thou', 'thou', '18 thou'],
  ['1 7/8"', 'in', '1 7/8"'],
  ['12.5', 'mm', '12.5 mm'],
  ['23', '°', '23°'],
  ['8', '', '8'],
  ['', 'cc', ''],
])('%j in %s reads %j', (text, unit, words) => {
  expect(typedFigure({ text, unit })).toBe(words)
})
