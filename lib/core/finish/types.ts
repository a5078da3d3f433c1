import type { Station, StepId } from '../route/step-ids'
import type { Day } from '../shop/calendar'
import type { ShopCalendar } from '../shop/open-calendar'
import type { QueueTimes } from './queue-times'
import type { Samples } from './samples'

/** A pseudo step of its own: to pack and send a head, and to release it. */
export type FinishStepId = StepId | 'send' | 'release'

/** One thing that is still to be done, in working days or at a vendor in calendar days. */
export type FinishStep =
  | {
      readonly at: 'here'
      readonly stepId: FinishStepId
      /** Null: it waits in no queue. */
      readonly station: Station | null
      /** From the step before it to its own tick, in working days: what waits between belongs to it. */
      readonly took: Samples
    }
  | {
      readonly at: 'vendor'
      readonly vendor: string
      /** From sending to arrival, in calendar days, freight in. */
      readonly took: Samples
      /** What the vendor said; it is not counted on to be early. */
      readonly promisedOn: Day | null
      /** Calendar days it has been out; null: not sent yet. */
      readonly daysOut: number | null
    }

/** Something that must come first: parts, an answer, a decision. In calendar days. */
export type FinishWait = {
  readonly code: 'parts' | 'answer' | 'hold' | 'bought'
  readonly what: string
  readonly took: Samples
  readonly elapsedDays: number
  readonly promisedOn: Day | null
  /** The first of the steps that waits for it. */
  readonly beforeStep: number
}

/** The heads that stand before this one at a station, and what they take there. */
export type QueueAhead = { readonly heads: number; readonly times: QueueTimes }

export type FinishInput = {
  /** Says which head it is: the draws of its steps and waits follow from it. */
  readonly seed: string
  readonly today: Day
  /** Share of today that has passed, 0 to 1. */
  readonly dayPart: number
  readonly calendar: ShopCalendar
  readonly steps: readonly FinishStep[]
  /** Working days that the first of them has been going on. */
  readonly elapsedDays: number
  readonly waits: readonly FinishWait[]
  readonly queues: Readonly<Partial<Record<Station, QueueAhead>>>
}

/** What takes the most time, in codes. */
export type Longest =
  | { readonly code: 'none' }
  | { readonly code: 'step'; readonly stepId: FinishStepId; readonly days: number }
  | { readonly code: 'queue'; readonly station: Station; readonly heads: number; readonly days: number }
  | { readonly code: 'vendor'; readonly vendor: string; readonly days: number }
  | { readonly code: FinishWait['code']; readonly what: string; readonly days: number }

export type Finish = {
  /** Half of all rounds are done by then. */
  readonly middleOn: Day
  /** And nine of ten by then. */
  readonly nineOfTenOn: Day
  readonly longest: Longest
  /** What it is drawn from: the shop's own record, settings, or some of each. */
  readonly from: 'own' | 'settings' | 'both'
}
