import type { CastingFacts } from '../casting/figures'
import type { DeckCut } from '../clearance/rigid-motion'
import type { HeadNow } from '../cut/plan-types'
import type { EngineFacts } from '../engine/figures'

export type ConsequencesInput = {
  readonly cut: DeckCut
  /** The record: every place from the new deck. */
  readonly casting: CastingFacts
  readonly engine: EngineFacts
  readonly deepEdge: 'intake' | 'exhaust'
  /** Mean of the chambers before, and as the head will leave the shop; null: not known. */
  readonly beforeCc: number | null
  readonly finishedCc: number | null
  /** What the planned seat work sinks the valves. */
  readonly sinkIn: number
  /** The heads that are cut alike, as they are now. */
  readonly heads: readonly HeadNow[]
  /** Flat-deck heads: what they hold are valve pockets, which may be less than nothing. */
  readonly flatDeck?: boolean
}
