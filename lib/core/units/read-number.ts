/** A number as typed, and what stands behind it. */
export type ReadNumber = {
  readonly number: number
  /** What follows the number, '' when nothing does: the unit, if it is one. */
  readonly rest: string
  /** Digits alone, no point and no fraction: a point may have been left out. */
  readonly digitsOnly: boolean
}

const mixed = /^(\d+)(?:\s+|-)(\d+)\s*\/\s*(\d+)/
const fraction = /^(\d+)\s*\/\s*(\d+)/
const decimal = /^\d+(?:\.\d*)?|^\.\d+/

/**
 * Reads the number at the start of a text whose minus, inch marks and decimal point are plain already: "-1-7/8 in" is
 * minus one and seven eighths. Null when there is none, or when it is none that anybody would write ("1/0", "1 9/8").
 */
export function readNumber(text: string): ReadNumber | null {
  const signed = /^([+-]?)\s*(.*)$/s.exec(text)
  if (!signed) return null
  const [, sign = '', body = ''] = signed
  const found = readUnsigned(body)
  if (!found) return null
  const rest = body.slice(found.length).trim()
  // A digit, a point or a sign right behind it: "1.2.3", "5-3", "3 415" are no figure.
  if (/^[\d.+-]/.test(rest)) return null
  // "+ 0": no minus zero.
  const number = sign === '-' && found.number !== 0 ? -found.number : found.number
  return { number, rest, digitsOnly: /^\d+$/.test(body.slice(0, found.length)) }
}

function readUnsigned(body: string): { readonly number: number; readonly length: number } | null {
  const whole = mixed.exec(body)
  if (whole) {
    const [all, units, over, under] = whole.map(String)
    const part = Number(over) / Number(under)
    return part < 1 ? { number: Number(units) + part, length: String(all).length } : null
  }
  const part = fraction.exec(body)
  if (part) {
    const number = Number(part[1]) / Number(part[2])
    return Number.isFinite(number) ? { number, length: part[0].length } : null
  }
  const plain = decimal.exec(body)
  return plain ? { number: Number(plain[0]), length: plain[0].length } : null
}
