import type { Fact } from '../known-facts'
import { quantities, type Quantity } from './quantities'

/** A figure of a calculation, held to what is plausible for its quantity: the limits of entry and of the core are one. */
export const factOf = (label: string, value: number | null | undefined, quantity: Quantity): Fact => [
  label,
  value,
  quantities[quantity].least,
  quantities[quantity].most,
]
