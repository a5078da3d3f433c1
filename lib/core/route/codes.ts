import type { Cell, Column } from './cells'
import type { Cause } from './do-again'
import type { PastMaker } from '../flat-deck/past-maker'
import type { OwnCondition } from './own-conditions'
import type { ReadingKind } from '../readings/types'
import type { ValveKind } from '../readings/valve-kinds'
import type { PastLimit } from '../valve-sheet/past-limit'
import type { CutKind, StepId, StepKey } from './step-ids'

export type OrderName = { readonly vendor: string; readonly number: string }

/** What a figure of this visit is held against. Lengths in inches. */
export type PastWhat = 'intake-side' | 'metal-removed' | 'cut' | 'clean-up' | 'ptv-loss'

/** Why a step is on a route. */
export type Why =
  | { readonly code: 'ordered' | 'every-head' }
  | { readonly code: 'cut'; readonly kind: CutKind }
  | { readonly code: 'sent-out' | 'comes-back'; readonly order: OrderName }
  | { readonly code: 'used-head' | 'overheated' | 'break-through' | 'valves-renewed' | 'flat-deck' }
  | { readonly code: 'after-work'; readonly steps: readonly StepId[] }
  | { readonly code: 'target' | 'class-limit' | 'engine-known' | 'chamber-too-small' }
  | { readonly code: 'flat-ordered' | 'flat-part' }
  | { readonly code: 'flat-left'; readonly leftIn: number }
  /** `isKnown`: one manifold spans the heads, or nobody knows. */
  | { readonly code: 'angle-manifold'; readonly isKnown: boolean }
  | { readonly code: 'past-limit'; readonly what: PastWhat; readonly valueIn: number; readonly limitIn: number }
  | { readonly code: 'ptv-left'; readonly leftIn: number; readonly limitIn: number }
  | { readonly code: 'cam-in-head' | 'seat-check-failed' | 'edge-left' }
  | { readonly code: 'clean-up-thickness' | 'cut-by-maker' | 'after-machining' }
  | { readonly code: 'came-assembled' | 'assembly-ordered' }
  | { readonly code: 'own'; readonly condition: OwnCondition; readonly limitIn: number | null }
  | Said

/** Why a step must be done again, or is no longer needed. */
export type Reason =
  | { readonly code: 'more-readings' | 'seat-check-failed' | 'not-asked' | 'not-rinsed' }
  | { readonly code: 'undone'; readonly cause: Cause }
  | { readonly code: 'angle-short'; readonly shortIn: number }
  | { readonly code: 'rejected'; readonly why: string }
  | { readonly code: 'plan-now'; readonly kind: CutKind }
  | Said

/** What a step waits for. A step by its key: its label is what the shop calls it. */
export type Wait =
  | StepWait
  | { readonly code: 'parts'; readonly what: string }
  | { readonly code: 'hold' | 'arrival' | 'plan' | 'release' }
  | { readonly code: 'away' | 'send-out'; readonly order: OrderName }
  | Said

/** As it stands in a row that was written before there were codes. */
export type Said = { readonly code: 'said'; readonly text: string }

/** An answer that means: stop. */
export type Stop = { readonly kind: ReadingKind; readonly answer: string }

export type StepWait = StepName & { readonly code: 'step' }

export type StepName = { readonly step: StepKey; readonly label: string }

/** What stands between a head and its release. `label`: the step’s. Volumes in cc, lengths in inches. */
export type Lack =
  | { readonly code: 'not-done'; readonly label: string }
  | { readonly code: 'redo'; readonly label: string; readonly reason: Reason | null }
  | { readonly code: 'reading'; readonly label: string; readonly kind: ReadingKind; readonly point: string }
  | { readonly code: 'finished-cc'; readonly point: string }
  | ({ readonly code: 'stop'; readonly label: string } & Stop)
  | {
      readonly code: 'off-target'
      readonly point: string
      readonly offCc: number
      readonly targetCc: number
      readonly toleranceCc: number
    }
  | { readonly code: 'under-class'; readonly point: string; readonly shortCc: number; readonly minCc: number }
  | { readonly code: 'not-straight'; readonly point: string; readonly valueIn: number; readonly limitIn: number }
  | { readonly code: 'seat-near-deck'; readonly point: string; readonly valueIn: number; readonly minIn: number }
  | ({ readonly code: 'past-maker'; readonly point: string } & PastMaker)
  /** A figure of the valve sheet past its limit, in the unit of its kind. */
  | ({ readonly code: 'valve-out'; readonly kind: ValveKind; readonly point: string } & PastLimit)
  | { readonly code: 'hold'; readonly reason: string }
  | { readonly code: 'findings'; readonly count: number }

export type ReadingsOwed = { readonly kind: ReadingKind; readonly points: readonly string[] }

/** A cut that another person looks at first. Depths in inches. */
export type SecondCheckNeed = {
  readonly depthIn: number
  readonly deeperThanIn: number
  /** False on a flat deck: it has no chamber to read. */
  readonly readsChamber: boolean
}

/** Why a step may not be ticked now. `label`: the step's own. */
export type TickRefused =
  | { readonly code: 'off-route' | 'on-order' }
  | { readonly code: 'ticked'; readonly label: string }
  | { readonly code: 'hold'; readonly reasons: readonly string[] }
  | { readonly code: 'away' | 'not-back'; readonly order: OrderName }
  | { readonly code: 'send-out'; readonly label: string; readonly order: OrderName }
  | { readonly code: 'stop'; readonly stops: readonly Stop[] }
  | ({ readonly code: 'second-check' } & SecondCheckNeed)
  | ({ readonly code: 'owed' } & Owing)

/** What a step owes before it is ticked. */
export type Owing = {
  readonly label: string
  readonly readings: readonly ReadingsOwed[]
  /** Steps that come first, by label. */
  readonly first: readonly string[]
  /** Parts that have not come. */
  readonly parts: readonly string[]
  readonly others: readonly ('plan' | 'release')[]
  /** Names of the gaps of its readings. */
  readonly needs: readonly string[]
}

/** What whoever ticks should know and may pass over. */
export type TickWarning = { readonly code: 'ticked' | 'usually-first'; readonly label: string }

/** What stands in the way of a tick, one thing at a time. */
export type InTheWay =
  | { readonly code: 'off-route' | 'on-order' | 'plan' | 'release' | 'second-check' }
  | { readonly code: 'hold'; readonly reason: string }
  | { readonly code: 'order'; readonly order: OrderName }
  | ({ readonly code: 'stop' } & Stop)
  | ({ readonly code: 'readings' } & ReadingsOwed)
  | { readonly code: 'first'; readonly label: string }
  | { readonly code: 'parts'; readonly what: string }

/** What the owner should know before releasing, and may let pass. Volumes in cc. */
export type ReleaseWarning = {
  readonly code: 'no-match'
  readonly whose: 'pair' | 'head'
  readonly worstCc: number
  readonly matchCc: number
}

/** What is wrong with a shop's own tables of steps. `label`: the step's. */
export type RulesFault =
  | { readonly code: 'step-not-found' | 'added-twice' }
  | { readonly code: 'no-name'; readonly what: 'station' | 'step' }
  | { readonly code: 'name-twice'; readonly what: 'station' | 'step'; readonly name: string }
  | { readonly code: 'name-too-long'; readonly name: string; readonly mostLetters: number }
  | { readonly code: 'cells-fixed' | 'not-conditional'; readonly label: string }
  /** A head can do without the step no more often than this, for this kind of cut. */
  | { readonly code: 'under-floor'; readonly label: string; readonly column: Column; readonly floor: Cell }
  | { readonly code: 'no-condition' | 'no-column' | 'no-limit' | 'after-the-last'; readonly label: string }
  | { readonly code: 'waits-for-unknown' | 'waits-for-itself' | 'waits-for-the-last'; readonly label: string }
  | { readonly code: 'circle'; readonly labels: readonly string[] }
  /** `head`: what kind of head would never be finished. */
  | { readonly code: 'endless'; readonly head: string; readonly labels: readonly string[] }
