import type { Refusal } from '@/lib/core/errors'
import { formatBare, formatFigure } from '@/lib/core/units/format-figure'
import type { Quantity } from '@/lib/core/units/quantities'
import type { UsableLift } from '@/lib/core/springs/usable-lift'
import type { CellLimits } from '@/lib/core/valve-sheet/cell-limits'
import type { ShimWithLift, SpringOfValve } from '@/lib/core/valve-sheet/spring'

/** "at most 0.0020 in", "0.0500 to 0.0700 in". */
export function limitWords({ lowest, highest }: CellLimits, quantity: Quantity): string {
  if (lowest === null) return highest === null ? '' : `at most ${formatFigure(highest, quantity)}`
  if (highest === null) return `at least ${formatFigure(lowest, quantity)}`
  return `${formatBare(lowest, quantity)} to ${formatFigure(highest, quantity)}`
}

/** Beside what "All alike" put there. */
export const filledWords = 'filled, not measured'

const inches = (value: number): string => formatFigure(value, 'lift')
const bounds: Readonly<Record<UsableLift['boundBy'], string>> = {
  retainer: 'retainer to seal',
  'coil-bind': 'coil bind',
}

/** "0.592 in, by retainer to seal: 0.042 in over the lift of 0.550 in". */
export function usableWords({ usableIn, boundBy, spareIn, enough }: UsableLift, liftIn: number): string {
  const held = `${inches(usableIn)}, by ${bounds[boundBy]}`
  const lift = `the lift of ${inches(liftIn)}`
  return enough ? `${held}: ${inches(spareIn)} over ${lift}` : `${held}: ${inches(-spareIn)} too little for ${lift}`
}

/** "Add 0.015 + 0.030 in: installed 1.755 in, 128 lbf on the seat, 348 lbf open". */
export function shimWords({ shimsIn, totalIn, idealIn, installedHeightIn, seatLbf, openLbf }: ShimWithLift): string {
  const force = (value: number) => formatFigure(value, 'springForce')
  if (shimsIn.length === 0) {
    const why = idealIn <= 0 ? 'the pressure is there already' : 'none is nearer than any shim'
    return `No shim, ${why}: ${force(seatLbf)} on the seat, ${force(openLbf)} open`
  }
  const named = shimsIn.map((shim) => formatBare(shim, 'shim')).join(' + ')
  const sum = shimsIn.length > 1 ? ` (${formatFigure(totalIn, 'shim')})` : ''
  const height = formatFigure(installedHeightIn, 'height')
  return `Add ${named} in${sum}: installed ${height}, ${force(seatLbf)} on the seat, ${force(openLbf)} open`
}

const partNames: Readonly<Record<string, string>> = {
  retainerToSealIn: 'retainer to seal',
  installedHeightIn: 'installed height',
  coilBindIn: 'coil bind',
  liftIn: 'valve lift (engine data)',
  seatLbf: 'seat pressure',
  rateLbfPerIn: 'spring rate, or open pressure and lift',
}

/** "needs retainer to seal and valve lift (engine data)". */
export function springNeeds({ code, needs = [], message }: Refusal): string {
  if (code !== 'missing') return message
  return `needs ${needs.map((need) => partNames[need] ?? need).join(', ')}`
}

/** Where the rate that the shims hang on comes from. */
export const rateWords = (from: SpringOfValve['rateFrom']): string =>
  from === 'maker' ? 'rate by the maker' : from === 'pressures' ? 'rate from seat and open pressure' : ''
