import { ok, refuse, type Result } from '../errors'
import { mmPerIn, thouPerIn } from '../units/factors'
import { quantities } from '../units/quantities'

/** One way to read what a vendor marked on a head; null: it does not say. */
export type VendorMarks = {
  readonly flatIn: number | null
  readonly angleIn: number | null
  readonly angleDeg: number | null
  /** Depth of all that was cut at the deep edge, where the mark says that alone: flat part and angle part together. */
  readonly deepIn: number | null
  /** The edge that the marks name as the deep one. */
  readonly edge: 'intake' | 'exhaust' | null
}

/**
 * The marks on a head that came back from a vendor, in every way they can be read.
 *
 * @param text as typed: depths in thou ("20", "20 thou"), inches (".020", "0.020 in") or mm ("0.5 mm"), degrees ("1°",
 *   "0.5 deg", "1/2 deg"), joined by + / , ; & or "and"; words may name flat, angle or an edge ("20 int / 83 exh")
 * @returns one or two readings, depths 0–0.5 in and degrees 0–5; refused with `unreadable` when a word or figure is not
 *   understood, with `ambiguous` when a single depth does not say what it is of
 *
 * A depth at a named edge may be all that was cut there or the angle part alone, and the second of two bare depths may be
 * either: both are given, the angle part first. "+" and the word "angle" say the part, "all" and "total" everything cut
 * there; a depth at both edges is what was cut at each. A bare whole number is thou, since no cut is an inch deep. Example: "20 + 63" → flat 0.020, angle part
 * 0.063; "0.020/0.083" → flat 0.020 with angle part 0.083, or with 0.063; "20 int / 83 exh" → flat 0.020, angle part
 * 0.063.
 * Common practice: marks are in thou, flat part first.
 */
export function readMarks(text: string): Result<readonly [VendorMarks, ...VendorMarks[]]> {
  const plain = text.replace(halfDegrees, (_, above: string, below: string) => `${Number(above) / Number(below)} deg`)
  if (looksLikeFraction(plain)) {
    return refuse('ambiguous', `“${text}”: is that a fraction of an inch, or a flat part and an angle part?`)
  }
  const pieces: Piece[] = []
  for (const part of plain.split(/[+/;&]|,(?!\d)|\band\b/i)) {
    const piece = pieceOf(part.trim())
    if (!piece) return refuse('unreadable', `“${text}” cannot be read as a flat part and an angle part.`)
    pieces.push(piece)
  }
  const plus = plain.includes('+')
  return (plus ? null : atBothEdges(text, pieces)) ?? readings(text, pieces, plus)
}

/** "1/2 deg", "3/4°": a fraction of a degree, no two parts. */
const halfDegrees = /\b([1-9])\s*\/\s*([248])\s*(?=°|deg)(?:°|degrees?\b|deg\b)/gi

type Role = 'flat' | 'angle' | 'degrees'
type Piece = {
  readonly value: number
  readonly role: Role | null
  readonly edge: VendorMarks['edge']
  /** The word "angle" stands with it: it is the part, not all that was cut. */
  readonly saysPart: boolean
  /** The word "all" or "total" stands with it: everything that was cut at that edge. */
  readonly saysAll: boolean
}

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
  all: '',
  total: '',
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
  const saysPart = said.includes('angle') || said.includes('tilt')
  const saysAll = said.includes('all') || said.includes('total')
  if (saysPart && saysAll) return null
  const edges = new Set(meant.filter((word) => word === 'intake' || word === 'exhaust'))
  const roles = new Set<Role>(meant.filter((word) => word === 'flat' || word === 'angle'))
  if (edges.size > 0) roles.add('angle')
  if (edges.size > 1 || roles.size > 1) return null
  const edge = [...edges][0] ?? null
  const value = Number(figure.replace(',', '.'))
  if (/^(°|deg)/i.test(unit)) {
    return value <= largestDeg && !roles.has('flat') ? { value, role: 'degrees', edge, saysPart, saysAll } : null
  }
  const valueIn = inches(value, unit.toLowerCase())
  return valueIn <= deepestIn ? { value: valueIn, role: [...roles][0] ?? null, edge, saysPart, saysAll } : null
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

/** A depth at each of the two edges: the lesser is the flat part, what the other has more is the angle part. */
function atBothEdges(text: string, pieces: readonly Piece[]): Result<[VendorMarks]> | null {
  const at = (edge: 'intake' | 'exhaust') => pieces.filter((piece) => piece.edge === edge && piece.role === 'angle')
  const [[intake, secondIntake], [exhaust, secondExhaust]] = [at('intake'), at('exhaust')]
  if (!intake || !exhaust) return null
  if (pieces.length > 2 || secondIntake || secondExhaust) return saysTwice(text)
  const deep = exhaust.value >= intake.value ? exhaust : intake
  const flatIn = Math.min(intake.value, exhaust.value)
  return ok([{ flatIn, angleIn: deep.value - flatIn, angleDeg: null, deepIn: null, edge: deep.edge }])
}

const saysTwice = (text: string) => refuse('unreadable', `“${text}” says one part twice.`)

function readings(text: string, typed: readonly Piece[], plus: boolean): Result<[VendorMarks, ...VendorMarks[]]> {
  const pieces = withPlaces(typed)
  const values = new Map(pieces.map((piece) => [piece.role, piece.value]))
  const edges = new Set(pieces.flatMap((piece) => piece.edge ?? []))
  if (values.has(null)) {
    return refuse('ambiguous', `“${text}”: is that the flat part, the angle part, or all that was cut at one edge?`)
  }
  if (values.size < pieces.length || edges.size > 1) return saysTwice(text)
  const parts: VendorMarks = {
    flatIn: values.get('flat') ?? null,
    angleIn: values.get('angle') ?? null,
    angleDeg: values.get('degrees') ?? null,
    deepIn: null,
    edge: [...edges][0] ?? null,
  }
  const all = asAllAtTheEdge(parts)
  if (pieces.some((piece) => piece.role === 'angle' && piece.saysAll)) {
    return all
      ? ok([all])
      : refuse('ambiguous', `“${text}”: all that was cut at an edge cannot be less than the flat part.`)
  }
  const isPart = plus || pieces.some((piece) => piece.role === 'angle' && piece.saysPart)
  return ok(all && !isPart ? [parts, all] : [parts])
}

/** The same with the depth at the deep edge as all that was cut there; null when that cannot be. */
function asAllAtTheEdge(parts: VendorMarks): VendorMarks | null {
  const { flatIn, angleIn } = parts
  if (angleIn === null) return null
  if (flatIn === null) return { ...parts, angleIn: null, deepIn: angleIn }
  return angleIn > flatIn ? { ...parts, angleIn: angleIn - flatIn } : null
}

/**
 * Marks in words that are read in one way only: what they were chosen to mean, as it is kept beside what stands on the
 * head.
 *
 * @param marks one of the readings that `readMarks` gives, depths in inches, degrees
 *
 * Example: flat 0.020 with 0.063 at the exhaust edge → "0.02 in flat; 0.063 in angle exhaust".
 * By definition: `readMarks` of it gives these marks and no others.
 */
export function marksInOneWay({ flatIn, angleIn, angleDeg, deepIn, edge }: VendorMarks): string {
  const at = edge ?? 'deep'
  return [
    flatIn === null ? '' : `${written(flatIn)} in flat`,
    angleIn === null ? '' : `${written(angleIn)} in angle${edge === null ? '' : ` ${edge}`}`,
    deepIn === null ? '' : `${written(deepIn)} in all ${at}`,
    angleDeg === null ? '' : `${written(angleDeg)} deg`,
  ]
    .filter((part) => part !== '')
    .join('; ')
}

/** A difference of two depths carries the rounding of the machine. */
const written = (value: number): string => String(Number(value.toFixed(6)))
