import { must, type Result } from '@/lib/core/errors'

/** One figure of the core, held against the same figure from outside. */
export type Check = {
  readonly quantity: string
  /** Where the outside figure comes from: print, a standard, another library, another method, or hand-working. */
  readonly source: string
  /** The outside figure; never one of our own. */
  readonly printed: number
  readonly unit: string
  readonly tolerance: number
  readonly ours: () => Result<number> | number
}

export type Section = { readonly title: string; readonly checks: readonly Check[] }

export const check = (
  quantity: string,
  source: string,
  [printed, unit, tolerance]: readonly [printed: number, unit: string, tolerance: number],
  ours: Check['ours'],
): Check => ({ quantity, source, printed, unit, tolerance, ours })

export function oursOf({ ours }: Check): number {
  const figure = ours()
  return typeof figure === 'number' ? figure : must(figure)
}

/** Two workings of one formula in doubles agree to this part, and no better. */
export const asDoubles = (value: number): number => 1e-12 * Math.max(1, Math.abs(value))
