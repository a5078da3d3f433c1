import { ok, refuse, type Result } from '../errors'
import { mmPerIn, thouPerIn } from '../units/factors'
import { quantities } from '../units/quantities'

/** What a vendor's marks say was cut; null: they do not say. */
export type VendorMarks = {
  readonly flatIn: number | null
  readonly angleIn: number | null
  readonly angleDeg: number | null
  /** The edge they name as the deep one. */
  readonly edge: 'intake' | 'exhaust' | null
}

/**
 * The marks on a head that came back from a vendor, as flat part and angle part.
 *
 * @param text as typed: depths in thou ("20", "20 thou"), inches (".020", "0.020 in") or mm ("0.5 mm"), degrees ("1°",
 *   "0.5 deg"), joined by + / , ; & or "and"; words may name flat, angle or an edge ("20 flat, 63 at the exhaust edge")
 * @returns depths 0–0.5 in and degrees 0–5; refused with `unreadable` when a word or figure is not understood, with
 *   `ambiguous` when a single depth does not say which part it is
 *
 * Assumes the trade's order, flat first, where two bare depths stand side by side; a bare whole number is thou, since no
 * cut is an inch deep. Example: "20 + 63" and "0.020/0.063" → flat 0.020, angle part 0.063; "63 EX" → angle part 0.063.
 * Common practice: marks are in thou, flat part first.
 */
export function readMarks(text: string): Result<VendorMarks> {
  if (looksLikeFraction(text)) {
    return refuse('ambiguous', `“${text}”: is that a fraction of an inch, or a flat part and an angle part?`)
  }
  const pieces: Piece[] = []
  for (const part of text.split(/[+/;&]|,(?!\d)|\band\b/i)) {
    const piece = pieceOf(part.trim())
    if (!piece) return refuse('unreadable', `“${text}” cannot be read as a flat part and an angle part.`)
    pieces.push(piece)
  }
  return together(text, withPlaces(pieces))
}

type Role = 'flat' | 'angle' | 'degrees'
type Piece = { readonly value: number; readonly role: Role | null; readonly edge: VendorMarks['edge'] }

const shape =
  /^([a-z\s]*?)\s*(\d*[.,]\d+|\d+)\s*(?:(°|degrees?|deg|thou|inch(?:es)?|in|"|″|mm)(?![a-z]))?\.?\s*([a-z\s]*)$/i
const words: Readonly<Record<string, Role | 'intake' | 'exhaust' | ''>> = {
  flat: 'flat',
  angle: 'angle',
  tilt: 'angle',
  deep: 'angle',
  edge: 'angle',
  exhaust: 'exhaust',
  ex: 'exhaust',
  exh: 'exhaust',
  intake: 'intake',
  int: 'intake',
  at: '',
  the: '',
  on: '',
  side: '',
  part: '',
  cut: '',
  off: '',
  of: '',
}

/** A fraction of an inch as rules have it, reduced: 1/64, 3/32. */
function looksLikeFraction(text: string): boolean {
  const [, above = '', below = ''] = /^\s*(\d+)\s*\/\s*(\d+)\D*$/.exec(text) ?? []
  return ['2', '4', '8', '16', '32', '64'].includes(below) && Number(above) < Number(below) && Number(above) % 2 === 1
}

const deepestIn = quantities.cutDepth.most
const largestDeg = quantities.angle.most

function pieceOf(text: string): Piece | null {
  const found = shape.exec(text)
  if (!found) return null
  const [, before = '', figure = '', unit = '', after = ''] = found
  const said = `${before} ${after}`.toLowerCase().split(/\s+/).filter(Boolean)
  const meant = said.map((word) => words[word])
  if (meant.includes(undefined)) return null
  const edges = new Set(meant.filter((word) => word === 'intake' || word === 'exhaust'))
  const roles = new Set<Role>(meant.filter((word) => word === 'flat' || word === 'angle'))
  if (edges.size > 0) roles.add('angle')
  if (edges.size > 1 || roles.size > 1) return null
  const edge = [...edges][0] ?? null
  const value = Number(figure.replace(',', '.'))
  if (/^(°|deg)/i.test(unit)) {
    return value <= largestDeg && !roles.has('flat') ? { value, role: 'degrees', edge } : null
  }
  const valueIn = inches(value, unit.toLowerCase())
  return valueIn <= deepestIn ? { value: valueIn, role: [...roles][0] ?? null, edge } : null
}

function inches(value: number, unit: string): number {
  if (unit === 'mm') return value / mmPerIn
  if (unit === 'thou') return value / thouPerIn
  return unit === '' && value > deepestIn ? value / thouPerIn : value
}

/** Two bare depths are flat and angle in that order; one bare beside a named part is the other part. */
function withPlaces(pieces: readonly Piece[]): readonly Piece[] {
  const bare = pieces.filter((piece) => piece.role === null)
  const named = pieces.flatMap((piece) => piece.role ?? [])
  if (bare.length === 2 && named.length === 0) {
    return pieces.map((piece, place) => ({ ...piece, role: place === 0 ? 'flat' : 'angle' }))
  }
  if (bare.length !== 1 || pieces.length === 1) return pieces
  const other: Role = named.includes('flat') ? 'angle' : 'flat'
  return pieces.map((piece) => (piece.role === null ? { ...piece, role: other } : piece))
}

function together(text: string, pieces: readonly Piece[]): Result<VendorMarks> {
  const values = new Map(pieces.map((piece) => [piece.role, piece.value]))
  const edges = new Set(pieces.flatMap((piece) => piece.edge ?? []))
  if (values.has(null)) {
    return refuse('ambiguous', `“${text}”: is that the flat part or the angle part?`)
  }
  if (values.size < pieces.length || edges.size > 1) {
    return refuse('unreadable', `“${text}” says one part twice.`)
  }
  return ok({
    flatIn: values.get('flat') ?? null,
    angleIn: values.get('angle') ?? null,
    angleDeg: values.get('degrees') ?? null,
    edge: [...edges][0] ?? null,
  })
}
