import { expect, it } from 'vitest'
import { callingCode, dialled, readPhone } from '@/lib/data/phone'

// Numbers set aside for invented people: 555-01xx in North America (NANPA), 020 7946 0xxx in London (Ofcom).
it.each([
  ['212-555-0199', 'US', '+12125550199', '2125550199'],
  ['(212) 555 0199 home', 'US', '+12125550199', '2125550199'],
  ['020 7946 0123', 'GB', '+442079460123', '02079460123'],
  ['+44 20 7946 0123', 'US', '+442079460123', '442079460123'],
  ['call my wife, 212-555-0199 after 6', 'US', '+12125550199', '2125550199'],
  ['call my wife, 555-0199 after 6', 'US', '', '5550199'],
  ['+1 555 0139', 'US', '', '15550139'],
  ['ask at the counter', 'US', '', ''],
])('%j typed in %s', (text, country, e164, digits) => {
  expect(readPhone(text, country)).toEqual({ e164, digits })
})

it.each([
  ['call my wife, 212-555-0199 after 6', '+12125550199'],
  // A number of the place, as it is dialled there.
  ['call my wife, 555-0199 after 6', '5550199'],
  // A country's code and too few figures after it: no number.
  ['+1 555 0139', ''],
  ['after 6', ''],
  ['', ''],
])('a link for %j dials %j and nothing else', (text, number) => {
  expect(dialled(text, 'US')).toBe(number)
})

it('a country that is not known is taken for the United States', () => {
  expect(callingCode('ZZ')).toBe('1')
  expect(callingCode('GB')).toBe('44')
})
