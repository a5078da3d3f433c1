import { ok, refuse, type Result } from '../errors'
import { mostMinor } from './limits'
import { totals, type PricedLine, type TaxAtRate, type Totals } from './totals'

/**
 * Whether the books can hold what a job comes to, in minor units: net, total, paid and due are each at most 2 000 000 000.
 * @returns refused as `invalid` when one of them is beyond it
 * Example: 9,999 pieces at 20,000,000.00 each, which is 19 998 000 000 000 minor units → refused.
 * Derived: `mostMinor`, the limit of the databases' whole numbers.
 */
export function checkHeld({ netMinor, totalMinor, paidMinor, dueMinor }: Totals): Result<true> {
  const most = Math.max(...[netMinor, totalMinor, paidMinor, dueMinor].map(Math.abs))
  return most <= mostMinor ? ok(true) : refuse('invalid', 'The job would come to too large an amount. Check it.')
}

/**
 * Whether discounts leave at least nothing of the lines that are not invoiced yet, before tax and with it. What is below
 * zero already may be changed for the better.
 * @param before the lines as they are, `after` as they would be
 * @returns refused as `invalid` when the sum would be below zero, and lower than it is
 * Example: 240.00 and a discount of 240.00 → fits; a discount of 240.01 → refused.
 * Derived: the sum of `lineNet`, and `totals` of the same lines.
 */
export function checkDiscounts(before: readonly PricedLine[], after: readonly PricedLine[]): Result<true> {
  const [was, is] = [totals(before, []), totals(after, [])]
  const fits = (of: 'netMinor' | 'totalMinor'): boolean => is[of] >= Math.min(0, was[of])
  if (fits('netMinor') && fits('totalMinor')) return ok(true)
  return refuse(
    'invalid',
    'The discounts would be more than the price lines come to. Change or remove a discount first.',
  )
}

/**
 * Whether discounts leave at least nothing at each tax: below it the shop would owe less tax than its other lines carry.
 * What is below zero already may be changed for the better.
 * @param before the lines as they are, `after` as they would be
 * @returns refused as `invalid` at `tax` when a rate's sum would be below zero, and lower than it is
 * Example: 100.00 without tax and a discount of 50.00 at 10 %, which would be a tax of −5.00 → refused.
 * Derived: the net of each rate in `totals` of both.
 */
export function checkTaxes(before: readonly PricedLine[], after: readonly PricedLine[]): Result<true> {
  const was = totals(before, []).taxes
  const netBefore = ({ name, rateMillionths }: TaxAtRate): number =>
    was.find((rate) => rate.name === name && rate.rateMillionths === rateMillionths)?.netMinor ?? 0
  const fits = totals(after, []).taxes.every((rate) => rate.netMinor >= Math.min(0, netBefore(rate)))
  if (fits) return ok(true)
  const message = 'The discounts would be more than the lines at this tax. Choose the tax of the lines they are for.'
  return refuse('invalid', message, { fields: { tax: message } })
}
