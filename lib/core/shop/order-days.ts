import { daysBetween } from './calendar'

export type OrderDays = {
  /** Days since it was sent or ordered. */
  readonly daysOut: number
  /** Days over the vendor's promise; 0: not late, none was given, or nothing is to come any more. */
  readonly daysLate: number
  /** The earliest promise to a customer that waits for it; null: none does. */
  readonly holdsUp: string | null
}

type Order = {
  readonly since: string
  readonly promisedOn: string | null
  /** Something of it has not come. */
  readonly isOpen: boolean
  /** Promises to the customers of what has not come, as far as they were given one. */
  readonly waiting: readonly (string | null)[]
}

/**
 * How an order at a vendor or a supplier stands by the calendar; days as "2026-11-24". Example: sent on the 2nd, promised
 * for the 9th, still out on the 12th → 10 days out, 3 days late.
 */
export const orderDays = ({ since, promisedOn, isOpen, waiting }: Order, today: string): OrderDays => ({
  daysOut: daysBetween(since, today),
  daysLate: isOpen && promisedOn !== null ? Math.max(0, daysBetween(promisedOn, today)) : 0,
  holdsUp:
    waiting
      .filter((day) => day !== null)
      .toSorted()
      .at(0) ?? null,
})
