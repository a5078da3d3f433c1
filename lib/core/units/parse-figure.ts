import { ok, refuse, type Result } from '../errors'
import { toCore, unitNamed } from './convert'
import { formatFigure, withUnit } from './format-figure'
import { quantities, unitFamilies, type Quantity } from './quantities'
import { readNumber, type ReadNumber } from './read-number'
import { unitTyped } from './unit-typed'

export type ParsedFigure = {
  /** In the core's unit. */
  readonly value: number
  /** As typed, trimmed: trailing zeros kept. */
  readonly text: string
  /** The unit typed, or the field's. */
  readonly unit: string
  /** What was understood: "0.0180 in (18 thou)". */
  readonly echo: string
}

const mostCharacters = 40

/**
 * Reads a figure as shops write them.
 *
 * @param text ".3415", "0,3415", "1/64", "1 7/8", "1-7/8", "10 thou", "+.010", "12.5 mm", "62 cc"; a true minus and a
 *   hyphen are both minus; one comma and no point is a decimal comma
 * @param quantity what is asked: its limits are what is physically plausible
 * @param fieldUnit in which a bare figure is meant; left out, or not one of the quantity's: the core's
 * @returns the value in the core's unit and the text as typed; refused as `unreadable`, `ambiguous` (with the readings
 *   offered), or `out-of-range`
 *
 * The unit typed always wins over the field's. Example: "18 thou" asked as a depth → 0.018 in; a bare "18" → "0.18 in or
 * 18 thou?".
 */
export function parseFigure(text: string, quantity: Quantity, fieldUnit?: string): Result<ParsedFigure> {
  const kept = text.trim()
  if (kept === '') return refuse('unreadable', 'Type a figure.')
  if (kept.length > mostCharacters) return refuse('unreadable', 'That is too long for a figure.')
  const plain = plainText(kept)
  if (!plain.ok) return plain
  const read = readNumber(plain.value)
  if (!read) {
    return refuse('unreadable', `“${kept}” is not a figure. Write it like .3415, 1/64, 1 7/8 or 10 thou.`)
  }
  const typed = unitTyped(read.rest, quantity)
  if (!typed.ok) return typed
  const own = quantities[quantity].unit
  const meant = typed.value ?? (fieldUnit !== undefined && unitNamed(quantity, fieldUnit) ? fieldUnit : own)
  const value = inCore(read.number, quantity, meant)
  const refused = typed.value === null ? bareRefused(read, kept, value, quantity, meant) : null
  const wrong = refused ?? impossible(value, kept, quantity)
  if (wrong) return wrong
  return ok({ value, text: kept, unit: meant, echo: echoOf(value, kept, quantity, typed.value, meant) })
}

/** No decimal that was typed is left out of what was understood: .3415 as a lift reads "0.3415 in". */
function echoOf(value: number, kept: string, quantity: Quantity, typed: string | null, meant: string): string {
  const { unit: own, decimals } = quantities[quantity]
  if (meant !== own) return `${formatFigure(value, quantity)} (${typed === null ? withUnit(kept, meant) : kept})`
  const typedDecimals = /[.,](\d+)/.exec(kept)?.[1]?.length ?? 0
  if (typedDecimals <= decimals) return formatFigure(value, quantity)
  return withUnit(value.toFixed(typedDecimals), own)
}

/** One kind of minus, one kind of inch and minute mark, a decimal point. */
function plainText(text: string): Result<string> {
  const plain = text.replaceAll(/[−–]/g, '-').replaceAll(/[″”“]/g, '"').replaceAll(/[′’]/g, "'").replaceAll(/\s/g, ' ')
  const [before, after, ...more] = plain.split(',')
  if (after === undefined) return ok(plain)
  const parted = more.length > 0 || /\d\.|\.\d/.test(plain)
  if (!parted) return ok(`${before}.${after}`)
  return refuse('ambiguous', `“${text}” can be read in two ways. Use a decimal point and no comma.`)
}

function inCore(number: number, quantity: Quantity, unit: string): number {
  const factors = unitNamed(quantity, unit)
  return factors ? toCore(number, factors) : number
}

const plausible = (value: number, { least, most }: { least: number; most: number }): boolean =>
  value >= least && value <= most

function impossible(value: number, kept: string, quantity: Quantity): Result<never> | null {
  const { least, most, whole, label } = quantities[quantity]
  if (!plausible(value, quantities[quantity])) {
    const span = `${formatFigure(least, quantity)} to ${formatFigure(most, quantity)}`
    return refuse('out-of-range', `${kept} is not possible for ${label}: it must be ${span}.`)
  }
  if (whole && !Number.isInteger(value)) return refuse('out-of-range', `${label}: enter a whole number.`)
  return null
}

/** A bare figure that cannot be meant in its field's unit, when another unit, or a point left out, would make sense. */
function bareRefused(
  read: ReadNumber,
  kept: string,
  value: number,
  quantity: Quantity,
  fieldUnit: string,
): Result<never> | null {
  const facts = quantities[quantity]
  const tooLarge = value > facts.most || (facts.least < 0 && value < facts.least)
  // 0.018 typed where thou are meant: it would stand on the paper as nothing.
  const shownAsNothing = value !== 0 && fieldUnit !== facts.unit && Math.abs(value) < 0.5 / 10 ** facts.decimals
  if (!tooLarge && !shownAsNothing) return null
  const readings = otherReadings(read, kept, quantity, fieldUnit)
  if (readings.length < 2) return null
  return refuse('ambiguous', `${kept}: ${readings.join(' or ')}? Write it with its unit.`)
}

/**
 * What it may have meant: those readings that are plausible and, so that there is something to choose from, the likeliest
 * other one. None when no reading is plausible: then it is simply impossible.
 */
function otherReadings(read: ReadNumber, kept: string, quantity: Quantity, fieldUnit: string): string[] {
  const { family, unit: own } = quantities[quantity]
  const units = [fieldUnit, ...Object.keys(unitFamilies[family]).filter((unit) => unit !== fieldUnit)]
  const pointLeftOut = read.digitsOnly && family === 'length' && /[1-9]/.test(kept)
  const readings = units.map((unit) =>
    pointLeftOut && unit === own
      ? reading(pointBefore(kept), quantity, own)
      : reading({ said: kept, number: read.number }, quantity, unit),
  )
  if (pointLeftOut) readings.sort((a, b) => Number(b.unit === own) - Number(a.unit === own))
  const meant = readings.filter((one) => one.plausible)
  if (meant.length === 0) return []
  const spare = meant.length === 1 ? readings.find((one) => !one.plausible) : undefined
  return readings.filter((one) => one.plausible || one === spare).map((one) => one.said)
}

function pointBefore(kept: string): { readonly said: string; readonly number: number } {
  const said = kept.replace(/^([+−–-]?)\s*/, '$10.')
  return { said, number: Number(said.replace(/[−–]/, '-')) }
}

function reading(
  { said, number }: { readonly said: string; readonly number: number },
  quantity: Quantity,
  unit: string,
) {
  const value = inCore(number, quantity, unit)
  return { said: withUnit(said, unit), unit, plausible: plausible(value, quantities[quantity]) }
}
