/** An amount as one would type it: 12550 with two decimals → "125.50". */
export function minorText(minor: number, exponent: number): string {
  const digits = String(minor).padStart(exponent + 1, '0')
  return exponent === 0 ? digits : `${digits.slice(0, -exponent)}.${digits.slice(-exponent)}`
}
