import type { Quantity } from '../units/quantities'

export const wantedPorts = ['intake', 'exhaust'] as const
export type WantedPort = (typeof wantedPorts)[number]

/** What is wanted: one line at a bench, for one port, for both, or for the head. */
export const wantedGroups = [
  'seat-angle',
  'seat-width',
  'guide-clearance',
  'insert-press',
  'runout',
  'recession',
  'stem-height',
  'lift',
  'installed-height',
  'coil-bind',
  'seat-pressure',
  'open-pressure',
  'straightness',
  'thickness',
] as const
export type WantedGroup = (typeof wantedGroups)[number]

/** `about`: the shop's tolerance lies round it; `least`, `most`: an end of what is wanted. */
type Part = 'about' | 'least' | 'most'

type Row = {
  readonly label: string
  readonly quantity: Quantity
  readonly group: WantedGroup
  readonly port: WantedPort | 'across' | 'along' | null
  readonly part: Part
  /**
   * Where the shop keeps its own figure: among the wanted ones, among its limits, or nowhere. What the engine says is typed
   * with the engine, and nowhere else.
   */
  readonly shop: 'wanted' | 'limit' | 'engine' | 'none'
}

const ofPort = <P extends WantedPort>(port: P, label: string, quantity: Quantity, group: WantedGroup, part: Part) =>
  ({ label: `${label}, ${port}`, quantity, group, port, part, shop: 'wanted' }) as const

const lift = <P extends WantedPort>(port: P) =>
  ({ label: `valve lift, ${port}`, quantity: 'lift', group: 'lift', port, part: 'about', shop: 'engine' }) as const

const straight = <P extends 'across' | 'along'>(port: P) =>
  ({
    label: `straightness ${port}, at most`,
    quantity: 'depth',
    group: 'straightness',
    port,
    part: 'most',
    shop: 'limit',
  }) as const

/**
 * Every figure that a bench is told to work to, in the order of the form. Target volume and finish stand with the job
 * itself: the one is the reason for the cut, the other is asked in the gasket maker's words.
 */
export const wantedFigures = {
  intakeSeatAngleDeg: ofPort('intake', 'seat angle', 'seatAngle', 'seat-angle', 'about'),
  exhaustSeatAngleDeg: ofPort('exhaust', 'seat angle', 'seatAngle', 'seat-angle', 'about'),
  intakeSeatWidthIn: ofPort('intake', 'seat width', 'depth', 'seat-width', 'about'),
  exhaustSeatWidthIn: ofPort('exhaust', 'seat width', 'depth', 'seat-width', 'about'),
  intakeGuideLeastIn: ofPort('intake', 'least guide clearance', 'guideClearance', 'guide-clearance', 'least'),
  intakeGuideMostIn: ofPort('intake', 'most guide clearance', 'guideClearance', 'guide-clearance', 'most'),
  exhaustGuideLeastIn: ofPort('exhaust', 'least guide clearance', 'guideClearance', 'guide-clearance', 'least'),
  exhaustGuideMostIn: ofPort('exhaust', 'most guide clearance', 'guideClearance', 'guide-clearance', 'most'),
  intakeInsertPressIn: ofPort('intake', 'press fit of the insert', 'insertPress', 'insert-press', 'about'),
  exhaustInsertPressIn: ofPort('exhaust', 'press fit of the insert', 'insertPress', 'insert-press', 'about'),
  intakeRecessionIn: ofPort('intake', 'valve recession', 'smallDepth', 'recession', 'about'),
  exhaustRecessionIn: ofPort('exhaust', 'valve recession', 'smallDepth', 'recession', 'about'),
  intakeStemHeightIn: ofPort('intake', 'stem height', 'height', 'stem-height', 'about'),
  exhaustStemHeightIn: ofPort('exhaust', 'stem height', 'height', 'stem-height', 'about'),
  intakeLiftIn: lift('intake'),
  exhaustLiftIn: lift('exhaust'),
  intakeInstalledHeightIn: ofPort('intake', 'installed height', 'height', 'installed-height', 'about'),
  exhaustInstalledHeightIn: ofPort('exhaust', 'installed height', 'height', 'installed-height', 'about'),
  intakeCoilBindIn: ofPort('intake', 'height at coil bind', 'height', 'coil-bind', 'about'),
  exhaustCoilBindIn: ofPort('exhaust', 'height at coil bind', 'height', 'coil-bind', 'about'),
  intakeSeatPressureLbf: ofPort('intake', 'pressure on the seat', 'springForce', 'seat-pressure', 'about'),
  exhaustSeatPressureLbf: ofPort('exhaust', 'pressure on the seat', 'springForce', 'seat-pressure', 'about'),
  intakeOpenPressureLbf: ofPort('intake', 'pressure, valve open', 'springForce', 'open-pressure', 'about'),
  exhaustOpenPressureLbf: ofPort('exhaust', 'pressure, valve open', 'springForce', 'open-pressure', 'about'),
  runoutMostIn: {
    label: 'runout of a seat, at most',
    quantity: 'depth',
    group: 'runout',
    port: null,
    part: 'most',
    shop: 'limit',
  },
  straightAcrossMostIn: straight('across'),
  straightAlongMostIn: straight('along'),
  /** A head with chambers is cut to its volume; no shop has one thickness for all heads. */
  finishedThicknessIn: {
    label: 'finished thickness of a flat-deck head',
    quantity: 'thickness',
    group: 'thickness',
    port: null,
    part: 'least',
    shop: 'none',
  },
} as const satisfies Readonly<Record<string, Row>>

export type WantedKey = keyof typeof wantedFigures
export const wantedKeys = Object.keys(wantedFigures) as readonly WantedKey[]

type KeyOf<S extends Row['shop']> = {
  [K in WantedKey]: (typeof wantedFigures)[K]['shop'] extends S ? K : never
}[WantedKey]

/** Those that are typed for a head, a job or a casting; the lift is typed with the engine. */
export type TypedWantedKey = KeyOf<'wanted' | 'limit' | 'none'>
export const typedWantedKeys = wantedKeys.filter((key): key is TypedWantedKey => wantedFigures[key].shop !== 'engine')

/** Those that are typed for the whole shop; the others stand among its limits. */
export type ShopWantedKey = KeyOf<'wanted'>
export const shopWantedKeys = wantedKeys.filter((key): key is ShopWantedKey => wantedFigures[key].shop === 'wanted')

/** A figure as it is kept: value in the core's unit, the text as typed, the unit typed. */
export type KeptFigure = { readonly value: number; readonly text: string; readonly unit: string }

/** What one place says is wanted: a head, a job, a casting's record, the shop. */
export type WantedFigures = Readonly<Partial<Record<WantedKey, KeptFigure>>>
