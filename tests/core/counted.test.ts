import { expect, it } from 'vitest'
import { counted } from '@/lib/core/counted'

it.each([
  [0, '0 lines'],
  [1, '1 line'],
  [3, '3 lines'],
] as const)('%s of something is said in one or in many', (count, said) => {
  expect(counted(count, 'line', 'lines')).toBe(said)
})
