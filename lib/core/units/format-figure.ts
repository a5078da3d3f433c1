import { fromCore, unitNamed } from './convert'
import { quantities, type Quantity } from './quantities'

/**
 * A value of the core with its unit, always with the same number of decimals for one quantity and unit, so that figures
 * stand under one another: 0.018 as a depth → "0.0180 in", in thou "18.0 thou".
 *
 * @param value in the core's unit
 * @param unit one of the quantity's units; left out, or not one of them: the core's
 */
export function formatFigure(value: number, quantity: Quantity, unit?: string): string {
  const shown = unit !== undefined && unitNamed(quantity, unit) ? unit : quantities[quantity].unit
  return withUnit(formatBare(value, quantity, shown), shown)
}

/** Degrees stand close, other units apart, a plain count alone. */
export const withUnit = (figure: string, unit: string): string =>
  unit === '' || unit === '°' ? `${figure}${unit}` : `${figure} ${unit}`

/** Without the unit. What is not a number reads "–". */
export function formatBare(value: number, quantity: Quantity, unit?: string): string {
  if (!Number.isFinite(value)) return '–'
  const { decimals, unit: own } = quantities[quantity]
  const shown = unitNamed(quantity, unit ?? own)
  if (!shown) return withoutMinusZero(value.toFixed(decimals))
  // A unit a thousand times smaller needs three decimals less to say the same.
  const fewer = Math.round(Math.log10(shown.over / shown.times))
  return withoutMinusZero(fromCore(value, shown).toFixed(Math.max(0, decimals - fewer)))
}

const withoutMinusZero = (figure: string): string => figure.replace(/^-(?=0(\.0*)?$)/, '')

/** A depth as machinists say it: 0.018 in → "18 thou", 0.0175 → "17.5 thou". */
export const formatThou = (depthIn: number): string => `${Number((depthIn * 1000).toFixed(1))} thou`
