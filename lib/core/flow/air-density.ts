import { ok, type Result } from '../errors'
import { checkLimits } from './limits'

const kgPerM3PerLbFt3 = 0.45359237 / 0.3048 ** 3

/**
 * lb/ft³ from kg/m³, by the exact pound and foot.
 * By definition: 1 lb = 0.45359237 kg, 1 ft = 0.3048 m. Example: 1.2 kg/m³ → 0.0749 lb/ft³.
 */
export const densityLbFt3FromKgM3 = (densityKgM3: number): number => densityKgM3 / kgPerM3PerLbFt3

/** Saturation vapour pressure of water, Pa (CIPM-2007, A.1.1). */
function saturationPa(temperatureK: number): number {
  return Math.exp(
    1.2378847e-5 * temperatureK ** 2 - 1.9121316e-2 * temperatureK + 33.93711047 - 6.3431645e3 / temperatureK,
  )
}

/** Mole fraction of water vapour (CIPM-2007, A.1.1 and A.1.2). */
function vapourFraction(temperatureC: number, pressurePa: number, humidityPercent: number): number {
  const enhancement = 1.00062 + 3.14e-8 * pressurePa + 5.6e-7 * temperatureC ** 2
  return ((humidityPercent / 100) * enhancement * saturationPa(temperatureC + 273.15)) / pressurePa
}

/** Compressibility of moist air (CIPM-2007, A.1.4). */
function compressibility(temperatureC: number, pressurePa: number, vapour: number): number {
  const overTemperature = pressurePa / (temperatureC + 273.15)
  const first =
    1.58123e-6 -
    2.9331e-8 * temperatureC +
    1.1043e-10 * temperatureC ** 2 +
    (5.707e-6 - 2.051e-8 * temperatureC) * vapour +
    (1.9898e-4 - 2.376e-6 * temperatureC) * vapour ** 2
  return 1 - overTemperature * first + overTemperature ** 2 * (1.83e-11 - 0.765e-8 * vapour ** 2)
}

/**
 * Density of moist air.
 *
 * @param temperatureC °C, −40–60 (the equation is stated for 15–27 and still good to 0.1 % in a workshop)
 * @param pressurePa barometer at the bench, not reduced to sea level, Pa, 50,000–110,000
 * @param humidityPercent relative humidity, 0–100
 * @returns kg/m³
 *
 * Assumes 0.0004 carbon dioxide by volume.
 * Formula and constants: CIPM-2007 (Picard, Davis, Gläser, Fujii, Metrologia 45 (2008) 149–155):
 * ρ = 3.483740·10⁻³·p/(Z·T)·(1 − 0.3780·x_v).
 * Example: 20 °C, 101,325 Pa, 50 % → 1.1993 kg/m³.
 * Source: CIPM-2007.
 */
export function airDensityKgM3(temperatureC: number, pressurePa: number, humidityPercent: number): Result<number> {
  const checked = checkLimits({ temperatureC, pressurePa, humidityPercent })
  if (!checked.ok) return checked
  const vapour = vapourFraction(temperatureC, pressurePa, humidityPercent)
  const z = compressibility(temperatureC, pressurePa, vapour)
  return ok(((3.48374e-3 * pressurePa) / (z * (temperatureC + 273.15))) * (1 - 0.378 * vapour))
}
