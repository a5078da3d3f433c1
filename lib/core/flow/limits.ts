import { ok, refuse, type Result } from '../errors'

/** What a flow bench can plausibly show; outside is refused as impossible. `least` and `most` are both allowed. */
export const flowLimits = {
  testPressureInH2O: { label: 'test pressure', unit: 'inH₂O', least: 0.5, most: 80 },
  flowCfm: { label: 'flow', unit: 'cfm', least: 0, most: 2000 },
  leakCfm: { label: 'leak', unit: 'cfm', least: 0, most: 2000 },
  liftIn: { label: 'valve lift', unit: 'in', least: 0, most: 2 },
  valveDiameterIn: { label: 'valve diameter', unit: 'in', least: 0.3, most: 5 },
  boreFixtureIn: { label: 'bore fixture', unit: 'in', least: 0.5, most: 12 },
  areaIn2: { label: 'area', unit: 'in²', least: 0.01, most: 100 },
  densityLbFt3: { label: 'air density', unit: 'lb/ft³', least: 0.02, most: 0.2 },
  temperatureC: { label: 'temperature', unit: '°C', least: -40, most: 60 },
  pressurePa: { label: 'barometer', unit: 'Pa', least: 50_000, most: 110_000 },
  humidityPercent: { label: 'relative humidity', unit: '%', least: 0, most: 100 },
  repeatability: { label: 'bench repeatability', unit: 'of the reading', least: 0, most: 0.2 },
  cylinders: { label: 'number of cylinders', unit: '', least: 1, most: 24 },
} as const

/** Lifts are set to a thou: two that differ by less than a tenth of it are one, and less than that is a shut valve. */
export const leastLiftIn = 0.0001
/** Less than a bench can show: nothing is taken as a part of it. */
export const leastFlowCfm = 0.01

export type FlowQuantity = keyof typeof flowLimits

/** Refuses the first value that is not a number inside its limits; true when all are. */
export function checkLimits(values: Readonly<Partial<Record<FlowQuantity, number>>>): Result<true> {
  for (const [name, value] of Object.entries(values)) {
    const { label, unit, least, most } = flowLimits[name as FlowQuantity]
    if (!(value >= least && value <= most)) {
      return refuse('out-of-range', `The ${label} must be from ${least} to ${most} ${unit}`.trim() + '.', {
        fields: { [name]: `${least} to ${most} ${unit}`.trim() },
      })
    }
  }
  return ok(true)
}
