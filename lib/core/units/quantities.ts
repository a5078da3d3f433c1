/**
 * Every quantity that can be typed: the core's unit, the units accepted, what is physically plausible (outside: refused
 * as impossible; a shop's tolerances are something else) and how many decimals are shown.
 */

const mmPerIn = 25.4 // exact, by definition of the inch
const thouPerIn = 1000
const cm3PerIn3 = (mmPerIn / 10) ** 3 // 16.387064, exact
const paPerInH2O = 249.0889 // conventional inch of water, NIST SP 811
const newtonsPerLbf = 4.4482216152605 // exact, by definition of the pound and of standard gravity
const litresPerFt3 = (cm3PerIn3 * 12 ** 3) / 1000 // 28.316846592, exact

/** Units a family is typed in: name → how many of the family's first unit one of it is. */
export const unitFamilies = {
  length: { in: 1, thou: 1 / thouPerIn, mm: 1 / mmPerIn },
  volume: { cc: 1, 'in³': cm3PerIn3 },
  area: { 'in²': 1, 'mm²': 1 / mmPerIn ** 2, 'cm²': 100 / mmPerIn ** 2 },
  angle: { '°': 1, min: 1 / 60 },
  pressure: { inH2O: 1, Pa: 1 / paPerInH2O, kPa: 1000 / paPerInH2O },
  flow: { cfm: 1, 'l/s': 60 / litresPerFt3 },
  temperature: { '°C': 1 },
  finish: { µin: 1, µm: 1000 / mmPerIn },
  force: { lbf: 1, N: 1 / newtonsPerLbf },
  rate: { 'thou/cc': 1 },
  count: { '': 1 },
} as const

export type UnitFamily = keyof typeof unitFamilies

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

const inches = (
  label: string,
  least: number,
  most: number,
  decimals: number,
  thou = false,
): QuantityFacts => ({
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
  pistonVolume: other('dish or dome', 'volume', 'cc', [0, 200], 1),
  area: other('area', 'area', 'in²', [0.5, 40], 4),
  bore: inches('bore', 0.5, 12, 4),
  stroke: inches('stroke', 0.5, 12, 4),
  length: inches('length', -20, 20, 3),
  milledWidth: inches('milled width', 1, 20, 3),
  cutDepth: inches('depth of cut', 0, 0.5, 4, true),
  depth: inches('depth', 0, 0.5, 4, true),
  thickness: inches('thickness', 0.3, 12, 4, true),
  lift: inches('valve lift', 0, 2, 3, true),
  valveDiameter: inches('valve diameter', 0.3, 5, 3),
  gasket: inches('gasket thickness', 0, 0.5, 4, true),
  deckClearance: inches('deck clearance', -0.5, 0.5, 4, true),
  clearance: inches('clearance', -0.5, 2, 4, true),
  smallDepth: inches('depth', -0.5, 0.5, 4, true),
  height: inches('height', 0.1, 12, 4, true),
  angle: other('angle', 'angle', '°', [0, 5], 3),
  valveAngle: other('angle', 'angle', '°', [-60, 60], 2),
  seatAngle: other('seat angle', 'angle', '°', [0, 90], 1),
  bankAngle: other('bank angle', 'angle', '°', [0, 180], 1),
  testPressure: other('test pressure', 'pressure', 'inH2O', [0.5, 80], 1),
  flow: other('flow', 'flow', 'cfm', [0, 2000], 1),
  temperature: other('temperature', 'temperature', '°C', [-40, 60], 1),
  finish: other('finish', 'finish', 'µin', [1, 500], 0),
  springForce: other('spring force', 'force', 'lbf', [0, 2000], 0),
  thouPerCc: other('rate', 'rate', 'thou/cc', [0.5, 200], 2),
  count: { ...other('count', 'count', '', [1, 100], 0), whole: true },
} as const satisfies Record<string, QuantityFacts>

export type Quantity = keyof typeof table
export const quantities: Readonly<Record<Quantity, QuantityFacts>> = table
export const quantityNames = Object.keys(table) as Quantity[]
