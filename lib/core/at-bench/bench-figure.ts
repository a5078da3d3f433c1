import type { CornerName } from '../straightness/corner-point'
import type { WantedLine } from '../wanted/at-step'
import type { SinkRoom } from './sink-room'

export type Edge = 'intake' | 'exhaust'

/**
 * A figure that a bench needs before it begins, as a code with its data: `lib/words/at-bench.ts` makes the sentence.
 * Lengths in inches, volumes in cc. `needs`: what would have to be known first, by the record's own names.
 */
export type BenchFigure =
  | { readonly code: 'leave-face' | 'leave-seats' }
  | { readonly code: 'face-cut'; readonly end: 'all' | 'deck' | 'cover'; readonly valueIn: number }
  | { readonly code: 'face-gap'; readonly valueIn: number }
  | { readonly code: 'rails-cut' | 'rails-gap' | 'port-drop'; readonly valueIn: number }
  | { readonly code: 'spot-face'; readonly valueIn: number; readonly acrossIn: number; readonly highSide: Edge }
  | {
      readonly code: 'slot'
      /** Holes by the name on record; empty: every hole, since none has a place on record. */
      readonly holes: readonly string[]
      readonly valueIn: number
      readonly toward: Edge
    }
  | { readonly code: 'no-slot'; readonly holes: readonly string[] }
  | { readonly code: 'thread-left' | 'dowel-left'; readonly valueIn: number; readonly minimumIn: number }
  | { readonly code: 'rocker-down' | 'pushrod-longer' | 'cam-down' | 'cam-slack'; readonly valueIn: number }
  | { readonly code: 'ptv-loss'; readonly port: Edge; readonly valueIn: number }
  | { readonly code: 'ptv-left'; readonly port: Edge; readonly valueIn: number; readonly minimumIn: number }
  | { readonly code: 'target'; readonly valueCc: number; readonly toleranceCc: number }
  | { readonly code: 'corner'; readonly corner: CornerName; readonly valueIn: number }
  | { readonly code: 'straight'; readonly acrossIn: number; readonly alongIn: number }
  | { readonly code: 'finish'; readonly asked: string }
  | { readonly code: 'marks'; readonly intakeIn: number; readonly exhaustIn: number }
  | { readonly code: 'seat-circle'; readonly port: Edge; readonly diameterIn: number }
  /** Sink of every valve alike that the plan of a cut to come counts on. */
  | { readonly code: 'sink-planned'; readonly valueIn: number; readonly valueCc: number }
  | ({
      readonly code: 'sink-room'
      readonly targetCc: number
      readonly toleranceCc: number
      readonly isReckoned: boolean
    } & SinkRoom)
  | { readonly code: 'wanted'; readonly line: WantedLine }
  /** Of a flat-deck head, by the engine maker; null: no limit on record at that end. */
  | {
      readonly code: 'maker-limits'
      readonly what: Edge | 'injector'
      readonly leastIn: number | null
      readonly mostIn: number | null
    }
  | { readonly code: 'thickness-least'; readonly valueIn: number }
  | { readonly code: 'needs'; readonly of: NeededBy; readonly needs: readonly string[] }
  | { readonly code: 'cannot'; readonly of: NeededBy; readonly why: string }

/** What cannot be said yet. */
export type NeededBy =
  | 'intake-side'
  | 'spot-face'
  | 'bolt-fit'
  | 'bolt-reach'
  | 'dowel-fit'
  | 'rocker'
  | 'cam'
  | 'ptv-intake'
  | 'ptv-exhaust'
  | 'corners'
  | 'sink'
