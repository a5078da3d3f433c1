import type { CutKind, Station, StepId, StepKey, WorkId } from './step-ids'
import type { OrderName, Lack, Reason, Wait, Why } from './codes'
import type { ReadingFact, ReadingKind } from '../readings/types'
import type { FlatDeckFacts } from '../flat-deck/past-maker'
import type { ValveCounts } from '../readings/valves'
import type { LimitFacts } from '../valve-sheet/cell-limits'
import type { RouteRules } from './rules'

export type EventKind =
  | 'start'
  | 'tick'
  | 'undo' // takes a tick back; the readings stay
  | 'waive'
  | 'read' // readings were recorded at a step
  | 'plan' // a new plan version
  | 'sent' // orderId went out
  | 'received' // orderId came back (this head of it)
  | 'confirm' // a scope step of orderId was seen done after the arrival
  | 'unconfirm' // and one that was confirmed turned out not to be
  | 'reject' // what came back of orderId is not taken as it is
  | 'valve-changed'
  | 'second-check' // another person read a chamber and confirmed plan and head before a cut
  | 'release'
  | 'return-as-is'

export type VisitEvent = {
  readonly seq: number
  readonly kind: EventKind
  readonly step: StepKey | null
}

export type PlanFacts = {
  readonly kind: CutKind
  /** Flat part and angle part (at the deep edge), in inches; 0 when the kind has none. Clean-up: the stop-at limit as flat. */
  readonly flatIn: number
  readonly angleIn: number
  readonly angleDeg: number
  /** Deck metal that the plan takes at its deepest, in inches. */
  readonly deepestIn: number
  /** Metal gone since new at the deepest place after this plan, all visits; null: new thickness unknown. */
  readonly totalRemovedIn: number | null
  /** Computed correction at the intake side, in inches; null: needs engine data. */
  readonly intakeSideIn: number | null
  /** Piston-to-valve loss, the larger of intake and exhaust, in inches; null: not known. */
  readonly ptvLossIn: number | null
  /**
   * The shop's own cuts stand behind the rate, so that a cut may go to size without a stop. Absent: not proven, and the
   * flat cut owes cc at the stop and at size.
   */
  readonly rateProven?: boolean
}

export type OrderFacts = {
  readonly orderId: string
  readonly number: string
  readonly vendor: string
  /** The steps the vendor was asked to do. */
  readonly scope: readonly StepId[]
  /** Angle part and flat part the vendor cuts, in inches. */
  readonly angleIn: number
  readonly flatIn: number
  readonly sentSeq: number | null
  readonly receivedSeq: number | null
  /** Scope steps that the arrival check confirmed; what is not confirmed stays in house. */
  readonly confirmed: readonly StepId[]
  readonly seatsIn: boolean
  /** Of scope steps confirmed after the arrival, the event that did; the work itself was done before it came back. */
  readonly confirmedSeqs?: Readonly<Partial<Record<StepId, number>>>
  /** Not taken as it came back: its steps are owed again. */
  readonly rejected?: { readonly seq: number; readonly why: string } | null
  /** What the corners say was cut, where they were read on its return; null: they were not. */
  readonly measured?: MeasuredParts | null
}

/** Depths in inches, and by how much they may be off what was ordered and still count as that. */
export type MeasuredParts = {
  readonly flatIn: number
  readonly angleIn: number
  readonly toleranceIn: number
}

export type RouteFacts = {
  readonly source: 'customer' | 'bought' | 'bought-cut'
  /** Bought, and not here yet: it wears no tag, and nothing can be done at it. */
  readonly onOrder?: boolean
  readonly used: boolean
  readonly cameAssembled: boolean
  readonly overheated: boolean
  /** Ordered lines, with those that accepted findings added. */
  readonly ordered: readonly WorkId[]
  readonly chambers: number
  /** Valves in a flat face, the chamber in the piston; absent or null: a head with chambers. */
  readonly flatDeck?: FlatDeckFacts | null
  /** Valves a chamber; one of each when left out. */
  readonly valves?: ValveCounts
  /** What the figures of its valves are held to at release; absent: nothing. */
  readonly valveLimits?: LimitFacts
  readonly plan: PlanFacts | null
  readonly previousPlan: PlanFacts | null
  /** In cc; null when there is none. */
  readonly targetCc: number | null
  readonly classMinCc: number | null
  readonly hasEngineData: boolean
  /** null: not known. */
  readonly camInHead: boolean | null
  readonly manifoldSpansHeads: boolean | null
  readonly remainingPtvIn: number | null
  readonly finishAsked: boolean
  readonly orders: readonly OrderFacts[]
  readonly events: readonly VisitEvent[]
  /** Corrections applied: the newest answer per step, kind and point, each with its event's sequence number. */
  readonly readings: readonly (ReadingFact & { readonly step: StepKey })[]
  readonly partsWaits: readonly { readonly step: StepKey; readonly what: string; readonly open: boolean }[]
  readonly openHolds: readonly { readonly reason: string }[]
  readonly openFindings: number
  /** Gaps the owner let pass, by name (`Missing.gap`): a waived reading no longer stands in the way of a tick. */
  readonly waivedGaps?: readonly string[]
  readonly settings: RouteSettings
}

/** Limits that decide conditions. Shop settings, versioned; defaults beside each in `settings.ts`. */
export type RouteSettings = {
  readonly ccToleranceCc: number
  /** Mean of the pair, each chamber within this. */
  readonly ccMatchCc: number
  readonly cleanUpSeatLimitIn: number
  readonly boltReachLimitIn: number
  readonly dowelLimitIn: number
  readonly rockerLimitIn: number
  readonly intakeLimitIn: number
  readonly ptvLossLimitIn: number
  readonly ptvRemainingLimitIn: number
  readonly cornersLimitIn: number
  readonly checkCcDeeperThanIn: number
  readonly straightAcrossIn: number
  readonly straightAlongPerCylinderIn: number
  readonly pairThicknessIn: number
  readonly sealingMarginIn: number
  /** Another person looks before the first pass of a cut that is planned deeper; 0: nobody has to. */
  readonly secondCheckDeeperThanIn: number
  /** What the shop made of the tables of steps, conditions and order. */
  readonly rules: RouteRules
}

export type StepState = 'to do' | 'ready' | 'started' | 'done' | 'do again' | 'waived' | 'not needed'

export type Owed = {
  readonly kind: ReadingKind
  readonly label: string
  /** Points wanted ('' when the kind has one answer). */
  readonly points: readonly string[]
  /** Those still without an answer that counts. */
  readonly missing: readonly string[]
  /** Offered, not owed: never missing. */
  readonly optional?: true
}

export type RouteStep = StepKey & {
  readonly label: string
  readonly station: Station
  readonly state: StepState
  /** Why it is on this route; null: it no longer belongs there. */
  readonly why: Why | null
  /** Why it must be done again, or why it is no longer needed; null otherwise. */
  readonly reason: Reason | null
  /** Newly needed under the newest plan version, nothing done at it yet. */
  readonly isNew: boolean
  /** Empty when ready. */
  readonly waitsFor: readonly Wait[]
  readonly owes: readonly Owed[]
  /** In the scope of an outside order that has not come back. */
  readonly outside: boolean
  /** Sequence of the last tick or waiver that counts; null when none. */
  readonly doneSeq: number | null
  /** The outside order that did it, once the arrival check confirmed it; null otherwise. */
  readonly byVendor: OrderName | null
}

export type Whereabouts =
  | 'expected'
  | 'on order'
  | 'in house'
  | 'away'
  | 'waiting for parts'
  | 'waiting for an answer'
  | 'held'
  | 'finished'
  | 'released'
  | 'handed over'
  | 'returned as is'
  | 'scrapped'
  | 'taken off' // it never came, and does not come any more

/** One thing that stands between a visit and its release. */
export type Missing = {
  readonly step: StepKey
  readonly label: string
  readonly lack: Lack
  /** `step`: not done; `reading`: owed; `tolerance`: measured and out. All three may be waived; `hold` may not. */
  readonly what: 'step' | 'reading' | 'tolerance' | 'hold' | 'finding'
  /** Stable name of this gap, so that a waiver can point at it. */
  readonly gap: string
}
