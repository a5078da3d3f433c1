import { expect, it } from 'vitest'
import { namesResemble, phonesResemble, slipsBetween } from '@/lib/core/customers/alike'

// Counted by hand: each step is one letter put in, taken out, changed, or two beside each other swapped.
it.each([
  ['smith', 'smith', 0],
  ['smith', 'smyth', 1],
  ['jon', 'john', 1],
  ['marie', 'maire', 1],
  ['kitten', 'sitting', 3],
  ['', 'abc', 3],
  ['abc', '', 3],
])('between %j and %j are %i slips', (a, b, slips) => {
  expect(slipsBetween(a, b)).toBe(slips)
  expect(slipsBetween(b, a)).toBe(slips)
})

it.each([
  ['Ann-Marie Böhm', 'annmarie bohm'],
  ['Smith, John', 'john smith'],
  ['Jon Smyth', 'John Smith'],
  ['John Smith', 'John A. Smith'],
  ['J. Smith', 'John Smith'],
  ['Brookmere Farm', 'Brookmere Farms'],
  ['Brookmere', 'Brookmere Farm'],
  ['Thistlewood', 'Thistelwood'],
])('%j may be %j', (a, b) => {
  expect(namesResemble(a, b)).toBe(true)
  expect(namesResemble(b, a)).toBe(true)
})

it.each([
  ['Ann Lee', 'Ben Lee'],
  ['Ann Lee', 'Ann Low'],
  ['Lee', 'Ann Lee'],
  ['John Smith', 'John Baker'],
  ['J. S.', 'John Smith'],
  ['Ada', 'Eda'],
  ['', 'Ada'],
  ['', ''],
])('%j is not %j', (a, b) => {
  expect(namesResemble(a, b)).toBe(false)
  expect(namesResemble(b, a)).toBe(false)
})

it.each([
  ['5550139', '15550139', true],
  ['02079460123', '442079460123', true],
  ['5550139', '5550138', false],
  ['50139', '15550139', false],
  ['', '15550139', false],
])('the figures %s and %s are one number: %s', (a, b, is) => {
  expect(phonesResemble(a, b)).toBe(is)
  expect(phonesResemble(b, a)).toBe(is)
})
