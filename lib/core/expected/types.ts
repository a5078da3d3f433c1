import type { ReadingKind } from '../readings/types'
import { placesOf } from '../readings/valves'
import type { StepId } from '../route/step-ids'
import type { Wanted } from '../wanted/wanted-of'
import type { ExpectedLimits } from './limits'

/** What a reading is held against: a code with its data; `lib/words/expected` makes the sentence. */
export type HeldAgainst =
  | { readonly code: 'before-less-cut'; readonly before: number; readonly depthIn: number }
  | { readonly code: 'before-and-cut'; readonly before: number; readonly depthIn: number }
  | { readonly code: 'before' } // nothing was cut between
  | { readonly code: 'other-chambers' }
  | { readonly code: 'mate' }
  | { readonly code: 'nominal-less-gone' }
  | { readonly code: 'other-corners' } // the plane of the other three
  | { readonly code: 'new-less-cut'; readonly before: number; readonly depthIn: number }
  | { readonly code: 'record-less-gone' }
  | { readonly code: 'other-valves' }
  | { readonly code: 'other-injectors' }
  | { readonly code: 'advised-stop' }
  | { readonly code: 'plan' }
  | { readonly code: 'thickness-left' }
  | { readonly code: 'last-total' }
  | { readonly code: 'limit' }
  | { readonly code: 'lift-below'; readonly liftIn: number }
  | { readonly code: 'lifts-beside' }
  /** Metal gone when the head last left this shop, at the edge where less was; `job`: the one it left on. */
  | { readonly code: 'earlier-visit'; readonly goneIn: number; readonly job: string }
  | { readonly code: 'run-before' }
  | { readonly code: 'wanted' }

/** What a reading is expected to be, in the core's unit of its kind. Outside low–high it is unlikely. */
export type Expected = {
  /** Null: only a span is expected. */
  readonly value: number | null
  /** Null: no limit on that side. */
  readonly low: number | null
  readonly high: number | null
  readonly why: HeldAgainst
  /** What sets each end; the same as `why` where one comparison sets both. */
  readonly lowWhy: HeldAgainst
  readonly highWhy: HeldAgainst
}

/** One comparison: several of one row hold together. */
export type Comparison = Pick<Expected, 'value' | 'low' | 'high' | 'why'>

/** Figures by kind and point: "cc|1", "thickness|intake-1". In the core's units. */
export type Figures = Readonly<Record<string, number>>

/** The name of a figure. Example: cc of chamber 1 → "cc|1". */
export const figureKey = (kind: ReadingKind, point: string): string => `${kind}|${point}`

/**
 * The name under which a figure is known at a point: its own, else the one that stood for all valves of its kind.
 *
 * Example: coil bind of 2-exhaust, where "coil-bind|exhaust" alone is known → "coil-bind|exhaust"; null: not known.
 */
export const knownKey = (figures: Figures, kind: ReadingKind, point: string): string | null =>
  placesOf(kind, point)
    .map((place) => figureKey(place.kind, place.point))
    .find((key) => figures[key] !== undefined) ?? null

/** Depth of what was cut between the readings before and now, in inches; null: cut, and not measured. */
export type CutSince = { readonly shallowIn: number; readonly deepIn: number }

/** How well the chambers are known, and what a cut takes out of them. */
export type ChamberFacts = {
  /** Standard deviation of one reading, and the burette's division. */
  readonly repeatabilityCc: number
  readonly divisionCc: number
  /** Standard uncertainty of each reading before, by point. */
  readonly uBeforeCc: Figures
  /** Where the opening's centre lies between the edges, 0–1; null: not known. */
  readonly centroidShare: number | null
  /** This head's own rate once it has one, else the record's; null: nothing to go by. */
  readonly rate: {
    readonly ccPerThou: number
    /** Without the spread between heads. */
    readonly uCcPerThou: number
    readonly priorCcPerThou: number
    /** 0 for the head's own rate. */
    readonly betweenHeadPart: number
  } | null
  readonly depthErrorThou: number
  readonly nominalLessGoneCc: number | null
  /** The chambers were worked on since: what they held before says nothing. */
  readonly workedSince: boolean
}

/** Where the seats of one port lie, as far as an angle cut asks for it; each null where it is not known. */
export type SeatFacts = {
  /** Deck as it is now to the named circle, by the record. */
  readonly recordNowIn: number | null
  readonly xIn: number | null
  readonly radiusIn: number | null
  readonly valveAngleDeg: number | null
}

type ByPort<T> = Readonly<Record<'intake' | 'exhaust', T>>

/** Everything that readings of one step of one head are held against. Plain data: screen and server ask the same. */
export type ExpectedFacts = {
  readonly stepId: StepId
  readonly chambers: number
  readonly limits: ExpectedLimits
  /** Read at this step, those just typed among them. */
  readonly here: Figures
  /** The newest of other steps before the cuts of this visit. */
  readonly before: Figures
  /** Of the mate at the like step: its mean for each kind and port, its mean for the chambers ("cc|"). */
  readonly mate: Figures
  readonly deepEdge: 'intake' | 'exhaust'
  readonly milledWidthIn: number | null
  /** How far inside the long edges the corners are touched; null: nobody has said. */
  readonly edgeInsetIn: number | null
  readonly cut: CutSince | null
  /** Flat depth that is part of `cut` and was read at the mill: what is typed there now takes its place. */
  readonly millDepthIn: number
  readonly chamber: ChamberFacts
  readonly thickness: {
    readonly newIn: number | null
    /** Metal gone before this visit; null: not known. */
    readonly goneIn: number | null
    /** Of a head that was cut here before: what was gone when it left, at the edge where less was. */
    readonly earlier?: { readonly goneIn: number; readonly job: string } | null
  }
  readonly seats: ByPort<SeatFacts>
  readonly seatWorkSince: boolean
  readonly mill: {
    readonly adviceIn: number | null
    readonly planFlatIn: number | null
    readonly planAngleIn: number | null
    /** Thickness that may still go at the thinnest place. */
    readonly leftIn: number | null
    readonly lastTotalIn: number | null
    /** The cutter is touched off anew with what is typed now: the count begins again. */
    readonly touchedOffAnew: boolean
  }
  readonly straightness: { readonly acrossIn: number; readonly alongIn: number }
  /** The run before of the same port at this pressure, by point. */
  readonly runBefore: Figures
  readonly leakCfm: number | null
  /** What is wanted of this head, each figure from the nearest place that says it. */
  readonly wanted: Wanted
  readonly liftIn: ByPort<number | null>
  /** Thickness of the shims that the shop has. */
  readonly shimsIn: readonly number[]
}
