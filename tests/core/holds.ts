import fc, { type Arbitrary } from 'fast-check'
import { expect, it } from 'vitest'
import { unsound } from './any-figure'

type Drawn<A extends unknown[]> = { [K in keyof A]: Arbitrary<A[K]> }

/** Whatever is typed, a function of core answers with figures or a refusal, never with NaN or Infinity. */
export const holds = <A extends unknown[]>(fn: (...args: A) => unknown, args: Drawn<A>, numRuns = 300) =>
  holdsFor(fn.name, args, fn, numRuns)

/** The same of an answer that is put together from several functions, under a name of its own. */
export const holdsFor = <A extends unknown[]>(
  name: string,
  args: Drawn<A>,
  ask: (...args: A) => unknown,
  numRuns = 300,
) =>
  it(name, () => {
    fc.assert(
      fc.property(fc.tuple(...args), (values) => {
        expect(unsound(ask(...(values as A)))).toBeNull()
      }),
      { numRuns },
    )
  })
