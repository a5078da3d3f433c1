import type { Day } from './calendar'

/** When the shop works. */
export type ShopCalendar = {
  /** Days of the week, 0 for Sunday to 6; at least one. */
  readonly openWeekdays: readonly number[]
  /** Holidays and other days on which nobody works, in order. */
  readonly closedDays: readonly Day[]
}

/** Monday to Friday [common practice]. */
export const usualCalendar: ShopCalendar = { openWeekdays: [1, 2, 3, 4, 5], closedDays: [] }

/** So many days the owner may name: years of holidays. */
export const mostClosedDays = 400
