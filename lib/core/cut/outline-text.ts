import { ok, refuse, type Refusal, type Result } from '../errors'
import { knownFacts } from '../known-facts'
import { factOf } from '../units/fact-of'
import { parseFigure } from '../units/parse-figure'
import { crossingEdges, openingOfOutline, outlinePerimeterIn, type Opening, type OutlinePoint } from './outline'

/** More corners than any digitiser gives of a chamber that a cut could tell apart. */
const mostPoints = 500

/** What may stand between the two figures of a line. */
const separators = /[;,]|\s+/g

type Read = OutlinePoint & { readonly unit: string }
type Line = Read & { readonly line: number }

/**
 * Reads a traced outline: a point a line, across from the shallow edge and along from end 1 of the chamber.
 *
 * @param text two figures a line, as `parseFigure` takes them (bare: inches), parted by a space, a tab, a semicolon or a
 *   comma; a decimal comma is one where the line can be read in no other way; empty lines do not count
 * @returns the points in inches, a closing point that repeats the first left out; refused with the number of the line:
 *   `unreadable`, `ambiguous` (two ways to read it, or units that differ), `out-of-range`
 *
 * Example: "2,0; 0,5" → 2 in across, 0.5 in along; "1,5 2" and "1.5, 2" are 1.5 and 2; "1,5 1/2" is refused.
 */
export function parseOutline(text: string): Result<readonly OutlinePoint[]> {
  const lines = linesOf(text)
  return lines.ok ? ok(lines.value.map(({ xIn, yIn }) => ({ xIn, yIn }))) : lines
}

function linesOf(text: string): Result<readonly Line[]> {
  const lines: Line[] = []
  for (const [at, typed] of text.split(/\r\n|\r|\n/).entries()) {
    if (typed.trim() === '') continue
    const line = at + 1
    const read = readLine(typed.trim())
    if (!read.ok) return onLine(line, read.refusal)
    const unit = lines[0]?.unit ?? read.value.unit
    if (read.value.unit !== unit) return onLine(line, otherUnit(unit, read.value.unit))
    lines.push({ ...read.value, line })
  }
  const points = closedOnce(lines)
  if (points.length <= mostPoints) return ok(points)
  return refuse('out-of-range', `An outline has at most ${mostPoints} points; this one has ${points.length}.`)
}

const onLine = (line: number, { code, message }: Refusal) => refuse(code, `Line ${line}: ${message}`)

const otherUnit = (one: string, other: string): Refusal => ({
  code: 'ambiguous',
  message: `${one} before and ${other} here. Write the same unit after every figure, or none for inches.`,
})

/** Digitisers end where they began. */
function closedOnce(lines: readonly Line[]): readonly Line[] {
  const [first, last] = [lines[0], lines.at(-1)]
  const closes = lines.length > 1 && first?.xIn === last?.xIn && first?.yIn === last?.yIn
  return closes ? lines.slice(0, -1) : lines
}

/** Tries the two figures at every place where they may part: what can be read in two ways is not guessed at. */
function readLine(typed: string): Result<Read> {
  const tried = [...typed.matchAll(separators)].map((mark) => ({
    x: oneFigure(typed.slice(0, mark.index), 'length'),
    y: oneFigure(typed.slice(mark.index + mark[0].length), 'alongHead'),
  }))
  const read = tried.flatMap(({ x, y }) => (x.ok && y.ok ? [{ x: x.value, y: y.value }] : []))
  const [first, ...more] = read
  if (!first) return refuse(...whyNot(typed, tried))
  const { x, y } = first
  if (more.some((other) => other.x.value !== x.value || other.y.value !== y.value))
    return refuse('ambiguous', `“${typed}” can be read in two ways: put a semicolon between the two figures.`)
  if (x.unit !== y.unit) return { ok: false, refusal: otherUnit(x.unit, y.unit) }
  return ok({ xIn: x.value, yIn: y.value, unit: x.unit })
}

/** Two commas are more than one figure has: there the line was parted in the wrong place. */
const oneFigure = (part: string, quantity: 'length' | 'alongHead') =>
  part.split(',').length > 2 ? refuse('unreadable', 'Enter one figure.') : parseFigure(part, quantity)

type Tried = { readonly x: Result<unknown>; readonly y: Result<unknown> }

/** Two figures of which one cannot be are told what is wrong with it; anything else, what is wanted. */
function whyNot(typed: string, tried: readonly Tried[]): readonly [Refusal['code'], string] {
  const refusals = tried.map(({ x, y }) => [x, y].flatMap((one) => (one.ok ? [] : [one.refusal])))
  const figures = refusals.find((both) => both.every(({ code }) => code !== 'unreadable'))
  const [refusal] = figures ?? []
  if (refusal) return [refusal.code, refusal.message]
  return ['unreadable', `“${typed}” is not two figures. Write how far across, a space, and how far along.`]
}

export type TracedOpening = Opening & {
  readonly points: readonly OutlinePoint[]
  readonly perimeterIn: number
}

/**
 * A chamber's opening from its outline as typed.
 *
 * @param text as for `parseOutline`
 * @param milledWidthIn 1–20 in: every point must lie within it
 * @returns area in in² (0.5–40), its centre's distance from the shallow edge and the perimeter in inches, with the points;
 *   refused as `openingOfOutline` refuses, with the numbers of the lines
 *
 * Example: "2 0", "5 0", "5 3", "2 3", one a line, on 7 in → 9 in² at 3.5, perimeter 12.
 * Derived: as `openingOfOutline`.
 */
export function tracedOpening(text: string, milledWidthIn: number | null | undefined): Result<TracedOpening> {
  const lines = linesOf(text)
  if (!lines.ok) return lines
  const width = knownFacts({ milledWidthIn: factOf('milled width', milledWidthIn, 'milledWidth') })
  if (!width.ok) return width
  const points = lines.value.map(({ xIn, yIn }) => ({ xIn, yIn }))
  const opening = openingOfOutline(points, width.value.milledWidthIn)
  if (!opening.ok) return refuse(opening.refusal.code, whichLines(opening.refusal, lines.value, width.value))
  return ok({ ...opening.value, points, perimeterIn: outlinePerimeterIn(points) })
}

function whichLines(
  { code, message }: Refusal,
  lines: readonly Line[],
  { milledWidthIn }: { readonly milledWidthIn: number },
): string {
  const off = lines.find(({ xIn }) => xIn < 0 || xIn > milledWidthIn)
  if (code === 'out-of-range' && off) return `Line ${off.line}: ${message}`
  const crossing = code === 'contradiction' ? crossingEdges(lines) : null
  if (!crossing) return message
  const edge = (at: number) => `from line ${lines[at]?.line} to ${lines[(at + 1) % lines.length]?.line}`
  return `The outline crosses or touches itself: ${edge(crossing[0])}, and ${edge(crossing[1])}.`
}
