import { ok, refuse, type Result } from '../errors'
import { quantities, type Quantity } from '../units/quantities'

/** Limits of what is typed are those of its quantity. */
const entered = (label: string, unit: string, quantity: Quantity) => {
  const { least, most } = quantities[quantity]
  return { label, unit, least, most }
}

/** What a flow bench can plausibly show; outside is refused as impossible. `least` and `most` are both allowed. */
export const flowLimits = {
  testPressureInH2O: entered('test pressure', 'inH₂O', 'testPressure'),
  flowCfm: entered('flow', 'cfm', 'flow'),
  leakCfm: entered('leak', 'cfm', 'flow'),
  liftIn: entered('valve lift', 'in', 'lift'),
  valveDiameterIn: entered('valve diameter', 'in', 'valveDiameter'),
  boreFixtureIn: entered('bore fixture', 'in', 'bore'),
  areaIn2: { label: 'area', unit: 'in²', least: 0.01, most: 100 },
  densityLbFt3: { label: 'air density', unit: 'lb/ft³', least: 0.02, most: 0.2 },
  temperatureC: entered('temperature', '°C', 'temperature'),
  pressurePa: { label: 'barometer', unit: 'Pa', least: 50_000, most: 110_000 },
  humidityPercent: { label: 'relative humidity', unit: '%', least: 0, most: 100 },
  repeatability: { label: 'bench repeatability', unit: 'of the reading', least: 0, most: 0.2 },
  cylinders: entered('number of cylinders', '', 'cylinders'),
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
