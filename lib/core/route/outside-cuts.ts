import type { OrderName } from './codes'
import { keyText } from './keys'
import type { StepId } from './step-ids'
import type { OrderFacts, RouteFacts } from './types'

export const orderName = ({ vendor, number }: OrderName): OrderName => ({ vendor, number })

const isCut = (stepId: StepId): boolean => stepId === 'angle-cut' || stepId === 'flat-cut'

export const confirmedCut = (order: OrderFacts): boolean => order.receivedSeq !== null && order.confirmed.some(isCut)

/** Depths below this are not set on any mill: a difference in the last figure is no cut. */
const leastCutIn = 0.00005

/**
 * Flat part of the plan that is not cut outside, in inches: plan f minus the sum of what the orders took, 0 when nothing
 * is left. An order took what it asked for, or what the corners say where they say something else; one that came back
 * without the cut confirmed, or was rejected, took nothing that was not measured.
 * Example: f 0.020, f_v 0.014 → 0.006; the corners say 0.009 where 0.014 was asked for, tolerance 0.002 → 0.011.
 */
export function flatLeftIn(facts: RouteFacts): number {
  const outside = facts.orders.reduce((sum, order) => sum + takenIn(facts, order, 'flatIn'), 0)
  const left = (facts.plan?.flatIn ?? 0) - outside
  return left > leastCutIn ? left : 0
}

/**
 * By how much the angle part that the corners show falls short of what was ordered, in inches; 0: it does not, or nobody
 * has measured. A new plan that wants no more than was cut is not short, nor is a cut that a second order made up for.
 */
export function angleShortIn(facts: RouteFacts): number {
  const cut = facts.orders.filter((order) => order.receivedSeq !== null)
  if (!cut.some((order) => order.measured)) return 0
  const orderedIn = cut.reduce((sum, order) => sum + order.angleIn, 0)
  const takenAllIn = cut.reduce((sum, order) => sum + takenIn(facts, order, 'angleIn'), 0)
  const toleranceIn = Math.max(...cut.map((order) => order.measured?.toleranceIn ?? 0))
  const shortIn = Math.min(facts.plan?.angleIn ?? 0, orderedIn) - takenAllIn
  return shortIn > toleranceIn + rounding ? shortIn : 0
}

/** Angle part of the plan that no order has taken yet, in inches: what the next vendor is asked for. */
export function angleLeftIn(facts: RouteFacts): number {
  const outside = facts.orders.reduce((sum, order) => sum + takenIn(facts, order, 'angleIn'), 0)
  return Math.max(0, (facts.plan?.angleIn ?? 0) - outside)
}

/** Decimals are not exact in binary: 0.022 − 0.020 is within 0.002. */
const rounding = 1e-9

/** Flat or angle part that an order took off this head, or is to take, in inches. */
export function takenIn(facts: RouteFacts, order: OrderFacts, part: 'flatIn' | 'angleIn'): number {
  const { measured } = order
  if (order.receivedSeq !== null && measured) {
    const near = Math.abs(measured[part] - order[part]) <= measured.toleranceIn + rounding
    return near ? order[part] : Math.max(0, measured[part])
  }
  return order.rejected || cutsNothing(facts, order) ? 0 : order[part]
}

function cutsNothing(facts: RouteFacts, order: OrderFacts): boolean {
  if (order.receivedSeq === null || order.confirmed.some(isCut)) return false
  const checked = { stepId: 'arrival-figures', occurrence: '', orderId: order.orderId } as const
  return facts.events.some((event) => event.kind === 'tick' && event.step && keyText(event.step) === keyText(checked))
}

export const brokenThrough = (facts: RouteFacts): RouteFacts['readings'] =>
  facts.readings.filter((reading) => reading.kind === 'break-through' && reading.text === 'broken')
