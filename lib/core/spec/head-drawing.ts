import type { CutKind } from '../route/step-ids'

export type Edge = 'intake' | 'exhaust'
export type Corner = 'intake-1' | 'exhaust-1' | 'intake-2' | 'exhaust-2'

/**
 * What one plan drawing of a head shows, on the tablet, the job sheet, the outside sheet and the spec sheet alike. Seen
 * on the deck, intake edge toward you, marked end at the left. Figures are already formatted; null: nothing to show.
 */
export type HeadDrawing = {
  /** How many; counted from the marked end. */
  readonly chambers: number
  /**
   * A head whose valves lie in a flat face has no chambers to draw: its valves, as shares of the deck's width (0 at the
   * intake edge), each as often as a cylinder has it; those without a place on record are left out. Absent: chambers.
   */
  readonly flatDeck?: {
    readonly valves: readonly { readonly across: number; readonly widthShare: number }[]
    readonly injectorAcross: number | null
  }
  readonly cutKind: CutKind
  /** The deep edge of an angle cut; null when the plan has no angle part. */
  readonly deepEdge: Edge | null
  /** Depth of the cut at each edge, with its unit: "0.083 in". */
  readonly edgeDepths: Readonly<Record<Edge, string | null>>
  /** Where the corners are touched: shares of the deck's width and length, and in words. Absent: nobody has said. */
  readonly touched?: { readonly acrossShare: number; readonly alongShare: number; readonly words: string }
  /** Thickness at the corners, with or without unit. */
  readonly cornerReadings: Readonly<Record<Corner, string | null>>
  /** One a chamber, from the marked end: "64.2". Shorter than `chambers` or empty: the rest is left blank. */
  readonly chamberReadings: readonly (string | null)[]
  /** Bolt holes by their share of width (0 at the intake edge) and length (0 at the marked end). Empty: places not on record. */
  readonly bolts: readonly {
    readonly across: number
    readonly along: number
    readonly long: boolean
    readonly slotted: boolean
    /** As the casting's record names it; absent: not named. */
    readonly label?: string
  }[]
  /** Toward which edge slotted holes are opened; null when there are none. */
  readonly slotToward: Edge | null
  /** Whether the slots were cut and read, or are what the plan needs; absent: cut. */
  readonly slotsAre?: 'cut' | 'needed'
  /** What the bench wrote about slotted holes, as it was typed; absent: nothing. */
  readonly slotNote?: string
}
