import { quantities, unitFamilies, type Quantity, type Unit } from './quantities'

/** One of the quantity's units by its own name; undefined when it is none of them. */
export function unitNamed(quantity: Quantity, name: string): Unit | undefined {
  const units = unitFamilies[quantities[quantity].family]
  return Object.hasOwn(units, name) ? units[name] : undefined
}

/**
 * Into the core's unit: 10 thou is 0.010 in.
 * By definition: (figure − zeroAt)·times/over. Example: 50 °F → 10 °C.
 */
export const toCore = (figure: number, { times, over, zeroAt }: Unit): number => ((figure - zeroAt) * times) / over

/**
 * A value of the core in another unit.
 * By definition: value·over/times + zeroAt. Example: 0.010 in → 10 thou.
 */
export const fromCore = (value: number, { times, over, zeroAt }: Unit): number => (value * over) / times + zeroAt
