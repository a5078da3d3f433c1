import { expect, it } from 'vitest'
import { markFor } from '@/app/_components/keypad/validation-hint'

it('a figure on the very end of its tolerance is in tolerance: 0.06 + 0.01 is 0.0699… in binary', () => {
  const limits = { lowest: 0.06 - 0.01, highest: 0.06 + 0.01 }
  expect(markFor('0.0700 in', 'depth', limits).kind).toBe('read')
  expect(markFor('0.0701 in', 'depth', limits).kind).toBe('out')
  expect(markFor('0.0500 in', 'depth', limits).kind).toBe('read')
  expect(markFor('0.0499 in', 'depth', limits).kind).toBe('out')
})
