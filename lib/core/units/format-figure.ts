import { quantities, type Quantity } from './quantities'

/** A value of the core with its decimals and unit: 0.018 as a depth of cut → "0.0180 in". */
export function formatFigure(value: number, quantity: Quantity): string {
  const { unit } = quantities[quantity]
  const figure = formatBare(value, quantity)
  return unit === '' || unit === '°' ? `${figure}${unit}` : `${figure} ${unit}`
}

/** Without the unit. */
export const formatBare = (value: number, quantity: Quantity): string =>
  value.toFixed(quantities[quantity].decimals).replace(/^-(?=0(\.0*)?$)/, '')

/** A depth as machinists say it: 0.018 in → "18 thou", 0.0175 → "17.5 thou". */
export const thou = (depthIn: number): string => `${Number((depthIn * 1000).toFixed(1))} thou`
