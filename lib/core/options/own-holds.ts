import type { ReadingFact } from '../readings/types'
import type { OrderName } from '../route/codes'
import type { StepKey } from '../route/step-ids'
import type { CutThrough } from './cut-through'

/** What puts a head on hold by itself, the moment that it is known. */
export type OwnHold =
  | { readonly code: 'count-short' | 'count-wrong' | 'damaged'; readonly order: OrderName }
  | ({ readonly code: 'cut-through' } & CutThrough)

/** With the name of its cause, so that one cause opens one hold. */
export type NamedHold = OwnHold & { readonly cause: string }

type Reading = ReadingFact & { readonly step: StepKey }

const answers: readonly {
  readonly kind: string
  readonly text: string
  readonly code: 'count-short' | 'count-wrong' | 'damaged'
}[] = [
  { kind: 'count', text: 'short', code: 'count-short' },
  { kind: 'count', text: 'wrong', code: 'count-wrong' },
  { kind: 'damage', text: 'damaged', code: 'damaged' },
]

/**
 * The holds that an arrival's answers call for: something is missing, wrong or damaged.
 *
 * @param readings that stand, of the whole head; the newest at each arrival counts
 *
 * Example: count "short" at the arrival of O-0004 → "count-short", named by that reading.
 */
export const arrivalHolds = (
  readings: readonly Reading[],
  orders: readonly (OrderName & { readonly orderId: string })[],
): NamedHold[] =>
  orders.flatMap(({ orderId, vendor, number }) =>
    answers.flatMap(({ kind, text, code }) => {
      const last = readings.findLast(
        ({ step, kind: of }) => step.stepId === 'arrival-count' && step.orderId === orderId && of === kind,
      )
      return last?.text === text ? [{ code, order: { vendor, number }, cause: `${code}:${last.id}` }] : []
    }),
  )

/**
 * The holds for seats that a cut has gone through. One cut opens one hold a port; a deeper one another.
 *
 * @param cutSeq the event of the last depth that was read
 *
 * Example: the exhaust seat, event 41 → named "cut-through:exhaust:41".
 */
export const cutThroughHolds = (found: readonly CutThrough[], cutSeq: number): NamedHold[] =>
  found.map((one) => ({ code: 'cut-through', ...one, cause: `cut-through:${one.port}:${cutSeq}` }))
