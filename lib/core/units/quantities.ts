import { ccPerIn3, litresPerFt3, mm2PerIn2, mmPerIn, newtonsPerLbf, paPerInH2O, paPerInHg, thouPerIn } from './factors'

/**
 * Every quantity that can be typed: the core's unit, the units accepted, what is physically plausible (outside: refused
 * as impossible; a shop's tolerances are something else) and how many decimals are shown.
 */

/** Core's figure = (figure − zeroAt)·times/over. Divided, not multiplied by a rounded inverse: 10 thou is 0.010 in. */
export type Unit = { readonly times: number; readonly over: number; readonly zeroAt: number }

const unit = (times: number, over = 1, zeroAt = 0): Unit => ({ times, over, zeroAt })

/** The units a family is typed in; the core's own comes first. */
const families = {
  length: { in: unit(1), thou: unit(1, thouPerIn), mm: unit(1, mmPerIn) },
  volume: { cc: unit(1), 'in³': unit(ccPerIn3) },
  area: { 'in²': unit(1), 'mm²': unit(1, mm2PerIn2), 'cm²': unit(100, mm2PerIn2) },
  angle: { '°': unit(1), min: unit(1, 60) },
  pressure: { inH2O: unit(1), Pa: unit(1, paPerInH2O), kPa: unit(1000, paPerInH2O) },
  flow: { cfm: unit(1), 'l/s': unit(60, litresPerFt3) },
  temperature: { '°C': unit(1), '°F': unit(5, 9, 32) },
  finish: { µin: unit(1), µm: unit(1000, mmPerIn) },
  force: { lbf: unit(1), N: unit(1, newtonsPerLbf) },
  springRate: { 'lbf/in': unit(1) },
  rate: { 'thou/cc': unit(1) },
  vacuum: { inHg: unit(1), kPa: unit(1000, paPerInHg) },
  gauge: { psi: unit(1), kPa: unit(mm2PerIn2, 1000 * newtonsPerLbf) },
  time: { min: unit(1), h: unit(60) },
  count: { '': unit(1) },
} as const satisfies Record<string, Readonly<Record<string, Unit>>>

export type UnitFamily = keyof typeof families
export const unitFamilies: Readonly<Record<UnitFamily, Readonly<Record<string, Unit>>>> = families

type QuantityFacts = {
  readonly label: string
  readonly family: UnitFamily
  /** The core's unit, which is also the field's. */
  readonly unit: string
  readonly least: number
  readonly most: number
  readonly decimals: number
  /** Units the keypad turns through. */
  readonly keypadUnits: readonly string[]
  /** Whole numbers only. */
  readonly whole?: true
}

const inches = (label: string, least: number, most: number, decimals: number, thou = false): QuantityFacts => ({
  label,
  family: 'length',
  unit: 'in',
  least,
  most,
  decimals,
  keypadUnits: thou ? ['in', 'thou', 'mm'] : ['in', 'mm'],
})

const other = (
  label: string,
  family: UnitFamily,
  unit: string,
  [least, most]: readonly [number, number],
  decimals: number,
): QuantityFacts => ({ label, family, unit, least, most, decimals, keypadUnits: [unit] })

const table = {
  chamberVolume: { ...other('chamber volume', 'volume', 'cc', [1, 400], 1), keypadUnits: ['cc'] },
  /** A flat-deck head alone may hold nothing. */
  flatDeckVolume: { ...other('chamber volume', 'volume', 'cc', [0, 400], 1), keypadUnits: ['cc'] },
  /** Proud valves take from the space over the piston. */
  pocketVolume: other('volume of the valve pockets', 'volume', 'cc', [-100, 400], 2),
  volume: other('volume', 'volume', 'cc', [0, 400], 2),
  pistonDish: other('piston dish', 'volume', 'cc', [0, 400], 1),
  pistonDome: other('piston dome', 'volume', 'cc', [0, 200], 1),
  area: other('area', 'area', 'in²', [0.5, 40], 4),
  bore: inches('bore', 0.5, 12, 4),
  stroke: inches('stroke', 0.5, 12, 4),
  length: inches('length', -20, 20, 3),
  /** A place along a head, and its length: those of long inline engines are far longer than any head is wide. */
  alongHead: inches('length along the head', -60, 60, 3),
  deckLength: inches('deck length', 1, 60, 3),
  milledWidth: inches('milled width', 1, 20, 3),
  cornerInset: inches('distance inside the edge', 0, 3, 3),
  /** A place on the deck, from one of its edges. */
  acrossDeck: inches('place across the deck', 0, 20, 3),
  /** 2 to 98 % of the milled width: a chamber never lies on an edge. */
  openingCentre: inches('centre of the opening', 0.02, 19.6, 3),
  perimeter: inches('chamber perimeter', 1, 40, 3),
  cutDepth: inches('depth of cut', 0, 0.5, 4, true),
  /** Where a clean-up stops at the latest. */
  stopAt: inches('stop-at limit', 0.0005, 0.1, 4, true),
  depth: inches('depth', 0, 0.5, 4, true),
  thickness: inches('thickness', 0.3, 12, 4, true),
  land: inches('land under the intake port', 0, 3, 4, true),
  lift: inches('valve lift', 0, 2, 3, true),
  valveDiameter: inches('valve diameter', 0.3, 5, 3),
  gasket: inches('gasket thickness', 0, 0.5, 4, true),
  deckClearance: inches('deck clearance', -0.5, 0.5, 4, true),
  clearance: inches('clearance', -0.5, 2, 4, true),
  smallDepth: inches('depth', -0.5, 0.5, 4, true),
  height: inches('height', 0.5, 4, 4, true),
  removed: inches('metal removed', 0, 1, 4, true),
  /** Below 0: proud of the deck. */
  seatDepth: inches('depth from the deck', -0.25, 2, 4, true),
  /** The same after all cuts, worked out: an earlier cut may have gone far past it. */
  seatDepthNow: inches('depth from the deck as it is now', -1.25, 2, 4, true),
  /** Deck to valve head with the valve shut; below 0: the valve stands proud. */
  recession: inches('valve recession', -0.25, 0.5, 4, true),
  /** Below 0: the injector lies behind the deck. */
  protrusion: inches('injector protrusion', -0.25, 0.5, 4, true),
  seatCircle: inches('diameter of a seat circle', 0.3, 6, 3),
  /** Along the valve's axis from the sealing circle, positive the way the valve opens. */
  seatOffset: inches('offset from the sealing circle', -1, 1, 4, true),
  sink: inches('sink', 0, 0.25, 4, true),
  /** Of a stem in its guide, across. */
  guideClearance: inches('guide clearance', 0, 0.02, 4, true),
  /** How much larger an insert is than its bore. */
  insertPress: inches('press fit', 0, 0.02, 4, true),
  angle: other('angle', 'angle', '°', [0, 5], 3),
  /** The same, either way. */
  lean: other('lean', 'angle', '°', [-5, 5], 3),
  valveAngle: other('angle', 'angle', '°', [-60, 60], 2),
  seatAngle: other('seat angle', 'angle', '°', [10, 80], 1),
  wallDraft: other('wall draft', 'angle', '°', [-45, 45], 1),
  bankAngle: other('bank angle', 'angle', '°', [0, 180], 1),
  testPressure: other('test pressure', 'pressure', 'inH2O', [0.5, 80], 1),
  flow: other('flow', 'flow', 'cfm', [0, 2000], 1),
  temperature: { ...other('temperature', 'temperature', '°C', [-40, 60], 1), keypadUnits: ['°C', '°F'] },
  /** No pump draws more than the air weighs. */
  vacuum: { ...other('vacuum', 'vacuum', 'inHg', [0, 30], 1), keypadUnits: ['inHg', 'kPa'] },
  /** Of a pressure check: higher than this no plate or plug should stand. */
  airPressure: { ...other('air pressure', 'gauge', 'psi', [1, 120], 0), keypadUnits: ['psi', 'kPa'] },
  waterTemperature: { ...other('water temperature', 'temperature', '°C', [0, 100], 0), keypadUnits: ['°F', '°C'] },
  minutes: other('time', 'time', 'min', [1, 600], 0),
  finish: other('finish', 'finish', 'µin', [1, 500], 0),
  /** Under 2 nothing fires; over 30 no engine turns over. */
  compressionRatio: other('compression ratio', 'count', '', [2, 30], 2),
  springForce: other('spring pressure', 'force', 'lbf', [1, 1000], 0),
  springRate: other('spring rate', 'springRate', 'lbf/in', [20, 3000], 0),
  shim: inches('shim', 0.001, 0.5, 4, true),
  /** All shims under one spring; 0: none. */
  shimStack: inches('shims', 0, 0.5, 4, true),
  thouPerCc: other('rate', 'rate', 'thou/cc', [0.5, 200], 2),
  boltDiameter: inches('diameter', 0.1, 2, 4),
  boltHoleLength: inches('bolt hole length', 0.1, 12, 3),
  spotFace: inches('spot face', 0.2, 4, 3),
  holeDepth: inches('depth of a hole', 0, 4, 3),
  faceHeight: inches('intake face height', 0.2, 10, 3),
  cylinders: { ...other('cylinders', 'count', '', [1, 24], 0), whole: true },
  chambers: { ...other('number of chambers', 'count', '', [1, 12], 0), whole: true },
  valvesPerChamber: { ...other('valves a chamber', 'count', '', [1, 3], 0), whole: true },
  count: { ...other('count', 'count', '', [1, 100], 0), whole: true },
} as const satisfies Record<string, QuantityFacts>

export type Quantity = keyof typeof table
export const quantities: Readonly<Record<Quantity, QuantityFacts>> = table
export const quantityNames = Object.keys(table) as Quantity[]
