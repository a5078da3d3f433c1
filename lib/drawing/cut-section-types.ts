import type { ChamberShape } from '@/lib/core/casting/chamber-shape'
import type { CastingFacts } from '@/lib/core/casting/figures'
import type { Motion, SectionPoint } from '@/lib/core/clearance/rigid-motion'
import type { ValveAxis } from '@/lib/core/clearance/valve-axis'
import type { OutlinePoint } from '@/lib/core/cut/outline'
import type { Port } from '@/lib/core/options/valve-consequences'
import type { CircleName } from '@/lib/core/seat/circles'

/** A head and a cut of its deck. Figures that are not known are left out of the drawing. */
export type CutSectionInput = {
  readonly casting: CastingFacts
  readonly chamberShape: ChamberShape
  readonly deepEdge: Port
  /** Angle part at the deep edge; degrees where they were given, else they follow from the milled width. */
  readonly cut: { readonly flatIn: number; readonly angleIn: number; readonly angleDeg: number | null }
  /** The chamber's opening as it was traced; without it a circle of the opening's area stands for it. */
  readonly outline?: readonly OutlinePoint[]
  readonly widthMm?: number
  /** For a telephone: fewer millimetres, larger words. */
  readonly narrow?: boolean
}

/** A circle about a valve's axis, cut by the section through its centre. */
export type SeatMark = {
  readonly name: CircleName | 'valve-rim'
  /** Where the section meets it, on the shallow and on the deep side. */
  readonly ends: readonly [shallow: SectionPoint, deep: SectionPoint]
  /** The point of its rim that lies nearest to the new deck. */
  readonly nearest: SectionPoint
  /** Height of that point over the new deck; negative when the cut has gone past it. */
  readonly overDeckIn: number
}

export type PlacedValve = {
  readonly port: Port
  readonly axis: ValveAxis
  readonly centre: SectionPoint
  /** Of the valve's head; null: not known, only its seat is. */
  readonly radiusIn: number | null
  /** The seat's circles that are known, widest first; the valve's own rim when none is. */
  readonly circles: readonly SeatMark[]
  readonly nearest: SeatMark
}

/** One stretch of the chamber's contour, straight or bent by two handles. */
export type ContourPiece = {
  readonly to: SectionPoint
  readonly by?: readonly [SectionPoint, SectionPoint]
  /** The mouth of a port: no metal there. */
  readonly mouth?: true
}

export type Contour = {
  readonly start: SectionPoint
  readonly pieces: readonly ContourPiece[]
  /** False: the walls stand where they may be, not where the record says. */
  readonly sure: boolean
}

export type SectionOpening = {
  readonly fromIn: number
  readonly toIn: number
  readonly source: 'outline' | 'area' | 'perimeter'
}

/** Everything that is drawn, in inches, in the core's frame: x from the shallow edge, z up from the old deck. */
export type SectionGeometry = {
  readonly widthIn: number
  readonly widthKnown: boolean
  /** Where the section is broken off. */
  readonly topIn: number
  readonly motion: Motion
  /** Why the cut cannot be drawn; null: it can. */
  readonly refused: string | null
  readonly angleDeg: number | null
  readonly depthsIn: { readonly shallow: number; readonly deep: number }
  readonly opening: SectionOpening | null
  readonly centreIn: number | null
  /** Intake before exhaust. */
  readonly valves: readonly PlacedValve[]
  /** The exhaust valve lies behind the intake valve, not beside it. */
  readonly oneBehindOther: boolean
  readonly chamber: Contour | null
  /** Where its walls stand on the old deck. */
  readonly wallsIn: readonly [fromIn: number, toIn: number] | null
  /** The chamber had to be drawn wider than its opening for the seats to lie in it. */
  readonly widened: boolean
  /** What the record does not have, in words. */
  readonly missing: readonly string[]
}

/** The figure, when it is known and lies between two limits. */
export const within = (value: number | null | undefined, least: number, most: number): number | null =>
  value !== null && value !== undefined && value >= least && value <= most ? value : null
