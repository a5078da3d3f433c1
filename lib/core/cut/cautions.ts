import type { GoneDiffers } from '../head-now/metal-gone'
import type { NearestSeat } from '../head-now/seat-now'

type Port = 'intake' | 'exhaust'
/** Which end of the engine maker's limits it is past. */
type Side = 'under' | 'over'

/** What the depth of a seat stands on, with whose it is. */
export type SeatStand = Pick<NearestSeat, 'ground' | 'notRead'> & {
  readonly tag: string
  readonly notKnownOf: readonly string[]
}

/** Of flat-deck heads, whose valves and injectors lie in the face that is cut. */
export type FlatDeckCaution =
  /** The one that is past it most of `count`; what seat work must sink it more: null: no seat work reaches it. */
  | {
      readonly code: 'valve-past'
      readonly tag: string
      readonly valve: string
      readonly side: Side
      readonly afterIn: number
      readonly limitIn: number
      readonly count: number
      readonly sinkMoreIn: number | null
    }
  | {
      readonly code: 'injector-past'
      readonly tag: string
      readonly chamber: string
      readonly side: Side
      readonly afterIn: number
      readonly limitIn: number
    }
  /** `needs`: what the record lacks, in a sentence. */
  | { readonly code: 'valves-not-known'; readonly tag: string; readonly needs: string }
  | { readonly code: 'valves-not-read'; readonly tag: string }
  | { readonly code: 'no-maker-limits'; readonly tag: string }
  | { readonly code: 'own-depth'; readonly tag: string; readonly depthIn: number }
  | {
      readonly code: 'no-deeper'
      readonly tag: string
      readonly depthIn: number
      readonly boundBy: 'recession' | 'protrusion' | 'thickness'
      readonly point: string
    }

/** What must be said of a cut before anybody agrees to it, with its figures. `lib/words/cut-cautions.ts` says it. */
export type CutCaution =
  | FlatDeckCaution
  | { readonly code: 'steep'; readonly angleDeg: number }
  | ({ readonly code: 'gone-differs'; readonly tag: string } & GoneDiffers)
  | {
      readonly code: 'thickness-not-known'
      readonly tags: readonly string[]
      readonly leastIn: number | null
      readonly rateProven: boolean
    }
  | { readonly code: 'land-place-not-known' }
  | {
      readonly code: 'uneven'
      readonly targetCc: number
      readonly toleranceCc: number
      readonly chambers: readonly { readonly tag: string; readonly chamber: number; readonly finishedCc: number }[]
    }
  | { readonly code: 'piston-to-valve'; readonly port: Port; readonly leftIn: number; readonly leastIn: number }
  /** The deck is through the seat already. */
  | { readonly code: 'seat-cut-through'; readonly port: Port; readonly byIn: number; readonly stand: SeatStand }
  /** `hold`: the new deck would reach it. */
  | {
      readonly code: 'seat-near'
      readonly port: Port
      readonly hold: boolean
      readonly marginIn: number
      readonly leastIn: number
      readonly stand: SeatStand
    }
  | { readonly code: 'bolts-bottom'; readonly byIn: number }
  | { readonly code: 'dowels-bottom' }
  | { readonly code: 'all-outside' }
  | { readonly code: 'opening' }
  /** Kept before cautions had codes: only the words are known. */
  | { readonly code: 'as-said'; readonly words: string }
