/**
 * Believable scatter without a clock or a die: the same name always gives the same figure, whatever was read before it.
 * FNV-1a over the name, then one round of mixing, taken as a fraction.
 */
function fractionOf(name: string): number {
  let hash = 0x811c9dc5
  for (const letter of name) hash = Math.imul(hash ^ (letter.codePointAt(0) ?? 0), 0x01000193)
  hash = Math.imul(hash ^ (hash >>> 15), 0x2c1b3c6d)
  hash = Math.imul(hash ^ (hash >>> 12), 0x297a2d39)
  return ((hash ^ (hash >>> 15)) >>> 0) / 2 ** 32
}

/** Between −most and +most, small departures likelier than large ones. */
export const scatter = (name: string, most: number): number =>
  (fractionOf(`${name} a`) + fractionOf(`${name} b`) - 1) * most

/** One of these, always the same for the same name. */
export function pick<T>(name: string, among: readonly [T, ...T[]]): T {
  return among[Math.floor(fractionOf(name) * among.length)] ?? among[0]
}
