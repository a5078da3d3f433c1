import type { HeadDrawing } from './head-drawing'

/** A figure ready to be set: "60.1" "cc", with a short note under it when it needs one. */
export type Figure = {
  readonly label: string
  readonly value: string
  /** '' when the figure has none. */
  readonly unit: string
  /** '' when there is nothing to add. */
  readonly note: string
}

/** Which picture stands beside the shop's name: by its content, so that another picture is another paper. */
export type ShopLogo = { readonly sha256: string; readonly widthPx: number; readonly heightPx: number }

export type ShopBlock = {
  readonly name: string
  /** Address, telephone, as the shop writes them. */
  readonly lines: readonly string[]
  /** Left out where there is none, as on every sheet that was frozen before a shop could have one. */
  readonly logo?: ShopLogo
}

/** One chamber, counted from the marked end. Null: not measured. */
export type SpecChamber = {
  readonly chamber: string
  readonly beforeCc: string | null
  readonly afterCc: string | null
  /** In words, when out of tolerance and waived; '' otherwise. */
  readonly remark: string
}

export type SpecChambers = {
  readonly rows: readonly SpecChamber[]
  /** Means and spread over the chambers, formatted; null when there is nothing to average. */
  readonly meanBeforeCc: string | null
  readonly meanAfterCc: string | null
  readonly spreadBeforeCc: string | null
  readonly spreadAfterCc: string | null
  /** "60.0 cc, each within 0.5 cc"; null: no target was asked. */
  readonly target: string | null
  /** Whose valves and which plug; "nominal, not measured" for a head that was bought in already cut. */
  readonly beforeWith: string
  readonly afterWith: string
  /** The same volumes as numbers, for the picture alone; a sheet that was frozen before there was one has none. */
  readonly picture?: ChamberPicture
}

export type ChamberPicture = {
  /** In cc, by chamber; null: not measured. */
  readonly beforeCc: readonly (number | null)[]
  readonly afterCc: readonly (number | null)[]
  readonly target: { readonly cc: number; readonly toleranceCc: number } | null
}

export type SpecCut = {
  /** "Angle cut, deep at the exhaust edge". */
  readonly what: string
  /** "0.063 in at the exhaust edge"; null: not planned. */
  readonly planned: string | null
  /** Null: not measured. */
  readonly measured: string | null
  /** How it was measured: "four corners, gauged on the new deck"; '' when not measured. */
  readonly how: string
  /** "by Northgate Grinding" or "in house". */
  readonly by: string
}

/** A line of a two-column list: valve and seat figures, heights, bolt work, straightness, finish. */
export type SpecLine = {
  readonly label: string
  readonly value: string
  /** What it should have come to, to be compared; left out: nobody said, or the sheet was frozen before it was told. */
  readonly wanted?: { readonly label: 'wanted' | 'limit'; readonly value: string }
}

export type SpecValveRow = { readonly name: string; readonly cells: readonly string[] }

/** Figures that are read at each valve: a row a valve, a column a figure. */
export type SpecValves = {
  readonly columns: readonly { readonly label: string; readonly unit: string }[]
  /** What each column should have come to, for either port; empty: nobody said. */
  readonly wanted: readonly SpecValveRow[]
  readonly rows: readonly SpecValveRow[]
  /** What the marks at figures mean; '' when there are none. */
  readonly note: string
}

export type SpecGroup = {
  readonly title: string
  readonly lines: readonly SpecLine[]
}

export type SpecFlowPoint = {
  readonly liftIn: number
  /** Null: not taken. */
  readonly flowCfm: number | null
}

export type SpecFlowRow = {
  readonly lift: string
  readonly before: string | null
  readonly after: string | null
  readonly diffCfm: string | null
  readonly diffPercent: string | null
  /** "within the bench's repeatability", "before not taken: coil bind", or ''. */
  readonly note: string
}

/** One port, run before and after; one of the two may be missing. */
export type SpecFlow = {
  readonly port: 'intake' | 'exhaust'
  /** "Intake, chamber 2"; "different head" is said in `notLike`. */
  readonly title: string
  readonly beforePoints: readonly SpecFlowPoint[]
  readonly afterPoints: readonly SpecFlowPoint[]
  readonly rows: readonly SpecFlowRow[]
  /** "mean, 0.100 to 0.300 in" and its figures, low to high, then the whole. */
  readonly means: readonly SpecFlowRow[]
  /** Test pressure, bore fixture, valve, fittings of each run, in words; '' when there was no such run. */
  readonly beforeConditions: string
  readonly afterConditions: string
  /** What is not like for like, in words; empty when the runs may be held against each other. */
  readonly notLike: readonly string[]
}

export type SpecWaiver = {
  readonly what: string
  readonly reason: string
  readonly by: string
  readonly at: string
}

export type SpecEarlier = {
  readonly revision: number
  /** Why it was made; '' for the first. */
  readonly reason: string
  readonly releasedBy: string
  readonly releasedAt: string
}

export type SpecDeclined = {
  readonly what: string
  /** "declined by telephone, 3 March"; '' when not noted. */
  readonly how: string
}

/**
 * Everything the customer's spec sheet says, computed and formatted, for the page and for the paper; frozen as JSON when
 * a visit is released. It holds no price, no internal note and nothing of another customer. Figures are text because the
 * sheet is a record of what was said then: a later change of format must not change it. Only what a picture is
 * drawn from stays numbers.
 */
export type SpecSheetData = {
  /** Version of this shape, so that a sheet frozen long ago can still be read. */
  readonly shape: 1
  /** BCP 47, "en". */
  readonly language: string
  readonly shop: ShopBlock
  readonly revision: number
  /** What the revision corrects; '' for the first. */
  readonly revisionReason: string
  /** The sheets it takes the place of, the first one first; absent: none, or frozen before they were named. */
  readonly earlier?: readonly SpecEarlier[]
  /** How the visit ended; `returned as is` lists what was not done in `notDone`. */
  readonly outcome: 'released' | 'returned as is'
  readonly releasedBy: string
  readonly releasedAt: string
  readonly jobNumber: string
  readonly customer: string
  /** Engine in words; '' when not known. */
  readonly engine: string
  readonly tag: string
  /** Casting, own stamp and marks, in words. */
  readonly casting: string
  readonly marks: string
  /** "goes on the left bank, marked end forward"; null: not said, and the sheet says so. */
  readonly side: string | null
  /** Tags of the other heads of the pair. */
  readonly pairTags: readonly string[]
  readonly asked: readonly string[]
  readonly done: readonly string[]
  readonly notDone: readonly string[]
  /** Two to four figures that are set huge on the first page. */
  readonly headline: readonly Figure[]
  readonly drawing: HeadDrawing
  /** Null: chambers were not part of this visit. */
  readonly chambers: SpecChambers | null
  readonly cuts: readonly SpecCut[]
  /** "0.043 in at the deepest, all visits" or "new thickness unknown". */
  readonly removedSinceNew: string
  /** Null: the engine is not known; then nothing is printed but what is needed. */
  readonly compression: {
    readonly before: string | null
    readonly after: string | null
    /** "needs the gasket's bore and thickness"; '' when both are there. */
    readonly needs: string
  } | null
  /** Absent: no valve was read, or a line in the groups says it, as on sheets of before. */
  readonly valves?: SpecValves
  readonly groups: readonly SpecGroup[]
  readonly flow: readonly SpecFlow[]
  readonly waivers: readonly SpecWaiver[]
  readonly declined: readonly SpecDeclined[]
  /** Where an outside cutter's marks lie by the inserts, one sentence; '' when there are none. */
  readonly cutterMarks: string
  readonly cautions: readonly string[]
  readonly notes: readonly string[]
}
