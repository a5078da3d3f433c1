import { ok, refuse, type Result } from '../errors'
import { formatFigure } from './format-figure'
import { quantities, unitFamilies, type Quantity, type UnitFamily } from './quantities'

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

/** How units are typed, beside their own name; lower case, without spaces. */
const spellings: Readonly<Record<UnitFamily, Readonly<Record<string, string>>>> = {
  length: {
    '"': 'in',
    inch: 'in',
    inches: 'in',
    'in.': 'in',
    thous: 'thou',
    mil: 'thou',
    mils: 'thou',
    'mm.': 'mm',
  },
  volume: { ccm: 'cc', cm3: 'cc', 'cm³': 'cc', ml: 'cc', in3: 'in³', cuin: 'in³', 'cu.in.': 'in³' },
  area: { in2: 'in²', sqin: 'in²', 'sq.in.': 'in²', mm2: 'mm²', cm2: 'cm²' },
  angle: { deg: '°', degree: '°', degrees: '°', "'": 'min' },
  pressure: { inh2o: 'inH2O', 'inh₂o': 'inH2O', inwater: 'inH2O', '"h2o': 'inH2O', pa: 'Pa', kpa: 'kPa' },
  flow: {},
  temperature: { c: '°C', '°c': '°C' },
  finish: { uin: 'µin', μin: 'µin', um: 'µm', μm: 'µm', ra: 'µin' },
  force: { lb: 'lbf', lbs: 'lbf', n: 'N' },
  rate: { thoupercc: 'thou/cc', thouacc: 'thou/cc' },
  count: {},
}

const mostCharacters = 40
const shape =
  /^([+-]?)\s*(?:(\d+)[\s-]+(\d+)\s*\/\s*(\d+)|(\d+)\s*\/\s*(\d+)|(\d*(?:\.\d*)?))\s*([^\d\s.+-][^\d]*[\d²³]?\p{L}*)?$/u

/**
 * Reads a figure as shops write them.
 *
 * @param text ".3415", "0,3415", "1/64", "1 7/8", "1-7/8", "10 thou", "+.010", "12.5 mm", "62 cc"; a true minus and a
 *   hyphen are both minus; one comma and no point is a decimal comma
 * @param quantity what is asked: its unit is the field's, its limits are what is physically plausible
 * @returns the value in the core's unit and the text as typed; refused as `unreadable`, `ambiguous` (with both readings
 *   offered), or `out-of-range`
 *
 * The unit typed always wins over the field's. Example: "18 thou" asked as a depth of cut → 0.018 in.
 */
export function parseFigure(text: string, quantity: Quantity): Result<ParsedFigure> {
  const kept = text.trim()
  if (kept === '') return refuse('unreadable', 'Type a figure.')
  if (kept.length > mostCharacters) return refuse('unreadable', 'That is too long for a figure.')
  const plain = plainText(kept)
  if (!plain.ok) return plain
  const match = shape.exec(plain.value)
  const number = match && numberOf(match)
  if (!match || number === null) {
    return refuse('unreadable', `“${kept}” is not a figure. Write it like .3415, 1/64, 1 7/8 or 10 thou.`)
  }
  const unit = unitOf(match[8], quantity)
  if (!unit.ok) return unit
  const { family, unit: fieldUnit } = quantities[quantity]
  const factors: Readonly<Record<string, number>> = unitFamilies[family]
  const value = number * (factors[unit.value ?? fieldUnit] ?? 1)
  const refused = outside(value, number, kept, quantity, unit.value === null)
  if (refused) return refused
  return ok({
    value,
    text: kept,
    unit: unit.value ?? fieldUnit,
    echo: echoOf(value, kept, quantity, unit.value),
  })
}

/** One kind of minus, one kind of inch mark, a decimal point. */
function plainText(text: string): Result<string> {
  const plain = text.replaceAll(/[−–]/g, '-').replaceAll(/[″”“]/g, '"').replaceAll(/[  ]/g, ' ')
  const commas = plain.split(',').length - 1
  const points = plain.split('.').length - 1
  if (commas === 0) return ok(plain)
  if (commas > 1 || (points > 0 && /\d/.test(plain.split('.')[1] ?? ''))) {
    return refuse(
      'ambiguous',
      `“${text}” has a comma that could part thousands or decimals. Write it with a point alone.`,
    )
  }
  return ok(plain.replace(',', '.'))
}

/** The number without its unit; null when it is none. */
function numberOf(match: RegExpExecArray): number | null {
  const [, sign, whole, over, under, num, den, decimal] = match
  const minus = sign === '-' ? -1 : 1
  const fraction = (top: string | undefined, bottom: string | undefined): number | null =>
    Number(bottom) === 0 ? null : Number(top) / Number(bottom)
  if (whole !== undefined) {
    const part = fraction(over, under)
    return part === null ? null : minus * (Number(whole) + part)
  }
  if (num !== undefined) {
    const part = fraction(num, den)
    return part === null ? null : minus * part
  }
  if (decimal === undefined || !/\d/.test(decimal)) return null
  return minus * Number(decimal)
}

/** The unit typed; null when none was. */
function unitOf(typed: string | undefined, quantity: Quantity): Result<string | null> {
  if (typed === undefined || typed.trim() === '') return ok(null)
  const { family } = quantities[quantity]
  const names = Object.keys(unitFamilies[family])
  const bare = typed.toLowerCase().replaceAll(/\s/g, '')
  const unit = names.find((name) => name.toLowerCase() === bare) ?? spellings[family][bare]
  if (unit) return ok(unit)
  const offered = names.filter((name) => name !== '').join(', ')
  return refuse(
    'unreadable',
    offered === ''
      ? `“${typed.trim()}” does not belong here: a plain number is wanted.`
      : `“${typed.trim()}” is not a unit of this. Use ${offered}.`,
  )
}

function outside(
  value: number,
  number: number,
  kept: string,
  quantity: Quantity,
  bare: boolean,
): Result<never> | null {
  const { least, most, whole, label } = quantities[quantity]
  if (whole && !Number.isInteger(value)) return refuse('out-of-range', `${label}: a whole number is wanted.`)
  if (value >= least && value <= most) return null
  if (bare && value > most) {
    const readings = otherReadings(number, kept, quantity)
    if (readings.length > 1)
      return refuse('ambiguous', `${kept}: ${readings.join(' or ')}? Write it with its unit.`)
  }
  const span = `${formatFigure(least, quantity)} to ${formatFigure(most, quantity)}`
  return refuse('out-of-range', `${kept} is not possible for ${label}: it must be ${span}.`)
}

/** What a bare number that is too large may have meant: its point left out, or thou. */
function otherReadings(number: number, kept: string, quantity: Quantity): string[] {
  const { family } = quantities[quantity]
  if (family !== 'length' || !/^\+?\d+([.,]\d+)?$/.test(kept)) return []
  const digits = kept.replace('+', '')
  const pointLeftOut = /^\d+$/.test(digits) ? [`0.${digits} in`] : [`${digits} in`]
  return number > 0 ? [...pointLeftOut, `${digits} thou`] : []
}

function echoOf(value: number, kept: string, quantity: Quantity, typedUnit: string | null): string {
  const { unit } = quantities[quantity]
  const said = formatFigure(value, quantity)
  return typedUnit === null || typedUnit === unit ? said : `${said} (${kept})`
}
