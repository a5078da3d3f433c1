import type { OrderName, Reason } from './codes'
import type { Cause } from './do-again'
import type { StepRef } from './keys'

/** What has become of one step so far. Numbers are sequence numbers of events. */
export type Mark = {
  readonly startedSeq: number | null
  readonly doneSeq: number | null
  readonly waived: boolean
  /** When the owner let it pass, whatever was ticked since; a tick that is taken back leaves that standing. */
  readonly waivedSeq: number | null
  /** The last time the work itself was done, here or by a vendor; a waiver does no work. */
  readonly workSeq: number | null
  /** The order that did it; null: it was done here, or not at all. */
  readonly byVendor: OrderName | null
  /** Why a vendor's work does not count as done; null when it does, or none was done. */
  readonly notTaken: Reason | null
}

export type History = {
  /** By `keyText`. */
  readonly markOf: (text: string) => Mark
  /** Angle and flat cuts that were really made, here or by a vendor. */
  readonly angleMade: boolean
  readonly flatMade: boolean
  readonly deckCutSeq: number | null
  /** The last thing that undid this step's answers; readings before it no longer count. */
  readonly undoneBy: (ref: StepRef) => { readonly seq: number; readonly cause: Cause } | null
}
