import { parseOutline } from '../cut/outline-text'
import { refuse, ok, type Result } from '../errors'
import { parseFigure } from '../units/parse-figure'
import { castingFigures, type CastingFigureKey } from './figures'
import { placesAcross } from './turned-round'

type Texts = Readonly<Record<string, string | undefined>>

/** The places of a record as they stand in its form. */
export type TypedPlaces = {
  /** By chamber form, then by figure. */
  readonly figures: Readonly<Record<string, Texts>>
  readonly outlines: Readonly<Record<string, string>>
  /** From the shallow edge, a bolt each. */
  readonly bolts: readonly string[]
}

export type Recounted = TypedPlaces & {
  /** What could not be read, by its name: it stands as it was. */
  readonly unread: readonly string[]
}

/** Positive toward the deep edge. */
const angles: readonly CastingFigureKey[] = ['intakeValveAngleDeg', 'exhaustValveAngleDeg']

/**
 * The places of a record counted from the other edge, as text in inches, and the valves' angles with their sign changed:
 * what a record needs when another edge becomes the deep one.
 *
 * @param milledWidth as typed, 1–20 in
 * @returns refused without a milled width that can be read; a place that cannot be read is left and named
 *
 * x′ = W − x, to a tenth of a thou; θ′ = −θ. Derived: the same head seen from the other end.
 * Example: width 7.000, valve at 3.000 leaning 23.0 → 4, −23.
 */
export function countedFromOtherEdge(typed: TypedPlaces, milledWidth: string): Result<Recounted> {
  const width = parseFigure(milledWidth, 'milledWidth')
  if (!width.ok) return refuse('missing', 'Enter the milled width first.', { needs: ['milledWidthIn'] })
  const widthIn = width.value.value
  const unread: string[] = []
  const place = (key: CastingFigureKey | null, text: string, name: string): string => {
    const read = parseFigure(text, key === null ? 'length' : castingFigures[key].quantity)
    if (!read.ok) unread.push(name)
    return read.ok ? plain(widthIn - read.value.value) : text
  }
  const angle = (text: string, name: string): string => {
    const read = parseFigure(text, 'valveAngle')
    if (!read.ok) unread.push(name)
    return read.ok ? plain(-read.value.value) : text
  }
  const figure = (key: string, text: string): string => {
    const across = placesAcross.find((one) => one === key)
    if (across) return place(across, text, castingFigures[across].label)
    const leaning = angles.find((one) => one === key)
    return leaning ? angle(text, castingFigures[leaning].label) : text
  }
  const figures = mapEach(typed.figures, (texts) => mapEach(texts, (text, key) => (text ? figure(key, text) : text)))
  const outlines = mapEach(typed.outlines, (text) => outlineFromOther(text, widthIn, () => unread.push('outline')))
  const bolts = typed.bolts.map((text, at) => (text === '' ? text : place(null, text, `bolt ${at + 1}`)))
  return ok({ figures, outlines, bolts, unread: [...new Set(unread)] })
}

const plain = (value: number): string => String(Number(value.toFixed(4)) + 0)

function outlineFromOther(text: string, widthIn: number, onUnread: () => void): string {
  if (text.trim() === '') return text
  const points = parseOutline(text)
  if (points.ok) return points.value.map(({ xIn, yIn }) => `${plain(widthIn - xIn)} ${plain(yIn)}`).join('\n')
  onUnread()
  return text
}

const mapEach = <T, U>(of: Readonly<Record<string, T>>, change: (value: T, key: string) => U): Record<string, U> =>
  Object.fromEntries(Object.entries(of).map(([key, value]) => [key, change(value, key)]))
