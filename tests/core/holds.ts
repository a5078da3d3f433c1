import fc, { type Arbitrary } from 'fast-check'
import { expect, it } from 'vitest'
import { unsound } from './any-figure'

/** Whatever is typed, a function of core answers with figures or a refusal, never with NaN or Infinity. */
export const holds = <A extends unknown[]>(
  fn: (...args: A) => unknown,
  args: { [K in keyof A]: Arbitrary<A[K]> },
  numRuns = 300,
) =>
  it(fn.name, () => {
    fc.assert(
      fc.property(fc.tuple(...args), (values) => {
        expect(unsound(fn(...(values as A)))).toBeNull()
      }),
      { numRuns },
    )
  })
