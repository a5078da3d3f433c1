import fc, { type Arbitrary } from 'fast-check'

/** Where in a value something stands that is no figure; null when all of it is sound. */
export function unsound(value: unknown, at = 'the value'): string | null {
  if (typeof value === 'number') return Number.isFinite(value) ? null : `${at} is ${value}`
  if (typeof value === 'string') return /NaN|undefined|Infinity/.test(value) ? `${at} says “${value}”` : null
  if (value === null || typeof value !== 'object') return null
  // A map shows its figures only as a list.
  for (const [key, part] of value instanceof Map ? value : Object.entries(value)) {
    const found = unsound(part, `${at}.${key}`)
    if (found !== null) return found
  }
  return null
}

export const finite = fc.double({ noNaN: true, noDefaultInfinity: true })
/** Mostly what a shop may mean, sometimes anything that a double can hold. */
export const near = (min: number, max: number): Arbitrary<number> =>
  fc.oneof(
    { weight: 12, arbitrary: fc.double({ min, max, noNaN: true }) },
    { weight: 1, arbitrary: fc.constantFrom(0, -0, min, max, -max, 1e-300, Number.MIN_VALUE) },
    { weight: 1, arbitrary: finite },
  )
/** For what takes a figure as it is, without a limit of its own: as far as a measure of this world can go. */
export const plain = (min: number, max: number): Arbitrary<number> =>
  fc.oneof(
    { weight: 3, arbitrary: fc.double({ min, max, noNaN: true }) },
    { weight: 1, arbitrary: fc.double({ min: -1e9, max: 1e9, noNaN: true }) },
  )
export const maybe = (figure: Arbitrary<number>): Arbitrary<number | null> =>
  fc.oneof({ weight: 9, arbitrary: figure }, { weight: 1, arbitrary: fc.constant(null) })
export const perhaps = (figure: Arbitrary<number>): Arbitrary<number | null | undefined> =>
  fc.oneof({ weight: 9, arbitrary: figure }, { weight: 1, arbitrary: fc.constantFrom(null, undefined) })
