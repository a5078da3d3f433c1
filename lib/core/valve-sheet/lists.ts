import { ok, refuse, type Result } from '../errors'
import { formatBare } from '../units/format-figure'
import { parseFigure } from '../units/parse-figure'

/** What the shop has or cuts, to be picked from at the valves. */
export type ValveLists = {
  /** Thickness of the shims in the drawer, 0.001–0.5 in, thinnest first. */
  readonly shimsIn: readonly number[]
  /** Seat cuts from the chamber to the port: "30 45 60". */
  readonly seatAngles: readonly string[]
}

/** Common practice, from memory; the owner changes it. */
export const usualValveLists: ValveLists = {
  shimsIn: [0.015, 0.03, 0.06],
  seatAngles: ['30 45 60', '15 45 75'],
}

const mostOfAList = 12

/**
 * Shims as typed, apart by commas.
 *
 * @returns each 0.001–0.5 in, thinnest first, each once; refused when one cannot be read
 *
 * By definition. Example: "0.060, .015" → 0.015, 0.060.
 */
export function parseShims(text: string): Result<readonly number[]> {
  const found: number[] = []
  for (const part of partsOf(text)) {
    const parsed = parseFigure(part, 'shim')
    if (!parsed.ok) return refuse(parsed.refusal.code, `${part}: ${parsed.refusal.message}`)
    found.push(parsed.value.value)
  }
  if (found.length > mostOfAList) return refuse('out-of-range', `At most ${mostOfAList}.`)
  return ok([...new Set(found)].sort((a, b) => a - b))
}

/**
 * Sets of seat angles as typed, apart by commas; a set is one to five angles of 5–85°.
 *
 * By definition. Example: "30 45 60,  15 45 75" → two sets.
 */
export function parseSeatAngles(text: string): Result<readonly string[]> {
  const sets = partsOf(text).map((part) => part.split(/\s+/))
  const odd = sets.find((set) => set.length > 5 || !set.every((angle) => isAngle(angle)))
  if (odd) return refuse('unreadable', `“${odd.join(' ')}”: enter one to five angles from 5 to 85, as 30 45 60.`)
  if (sets.length > mostOfAList) return refuse('out-of-range', `At most ${mostOfAList}.`)
  return ok([...new Set(sets.map((set) => set.join(' ')))])
}

const isAngle = (text: string): boolean => /^\d{1,2}(\.\d)?$/.test(text) && Number(text) >= 5 && Number(text) <= 85

const partsOf = (text: string): string[] =>
  text
    .split(/[,;\n]/)
    .map((part) => part.trim())
    .filter((part) => part !== '')

/** As they stand in the field: "0.0150, 0.0300". */
export const shimsText = (shimsIn: readonly number[]): string =>
  shimsIn.map((shim) => formatBare(shim, 'shim')).join(', ')
