import { lower } from '../core/route/words'
import { formatBare, formatFigure } from '../core/units/format-figure'
import { allWanted, type WantedAt, type WantedLine } from '../core/wanted/at-step'
import { wantedFaults, type WantedFault } from '../core/wanted/faults'
import { wantedFigures, type WantedFigures, type WantedGroup, type WantedKey } from '../core/wanted/figures'
import type { WantedSpan } from '../core/wanted/spans'
import { wantedOf, type Wanted, type WantedFigure, type WantedPlace } from '../core/wanted/wanted-of'
import type { Quantity } from '../core/units/quantities'
import type { BenchLine } from './bench-line'

const groupWords: Readonly<Record<WantedGroup, string>> = {
  'seat-angle': 'Seat angle',
  'seat-width': 'Seat width',
  'guide-clearance': 'Guide clearance',
  'insert-press': 'Press fit of the insert',
  runout: 'Runout of a seat',
  recession: 'Valve recession',
  'stem-height': 'Stem height',
  lift: 'Valve lift',
  'installed-height': 'Installed height',
  'coil-bind': 'Height at coil bind',
  'seat-pressure': 'Pressure on the seat',
  'open-pressure': 'Pressure, valve open',
  thickness: 'Finished thickness',
  straightness: 'Straightness',
}

/** "Seat width" */
export const wantedGroupWords = (group: WantedGroup): string => groupWords[group]

const placeWords: Readonly<Record<WantedPlace, string>> = {
  head: 'for this head',
  job: 'for this job',
  casting: 'casting record',
  shop: 'shop default',
}

/** "for this head" */
export const wantedPlaceWords = (place: WantedPlace): string => placeWords[place]

/** "0.0010 to 0.0020 in", "at most 0.0020 in", "0.0600 in" */
export function wantedValue({ about, least, most }: Omit<WantedAt, 'port'>, quantity: Quantity): string {
  const said = (figure: WantedFigure): string => formatFigure(figure.value, quantity)
  if (about) return said(about)
  if (least && most) return `${formatBare(least.value, quantity)} to ${said(most)}`
  if (least) return `at least ${said(least)}`
  return most ? `at most ${said(most)}` : ''
}

const quantityOf = (group: WantedGroup): Quantity =>
  Object.values(wantedFigures).find((row) => row.group === group)?.quantity ?? 'depth'

/** "intake 0.0600 in, exhaust 0.0800 in"; "45.0°, both" */
function atEach(at: WantedLine['at'], values: readonly string[]): string {
  if (at.length === 2 && values[0] === values[1]) return `${values[0] ?? ''}, both`
  return at.map(({ port }, nth) => [port, values[nth]].filter(Boolean).join(' ')).join(', ')
}

/** Beside what was measured: wanted "intake 0.0600 in, exhaust 0.0800 in"; limit "0.0020 in". */
export function besideMeasured({ group, at }: WantedLine): { label: 'wanted' | 'limit'; value: string } {
  const isLimit = at.every(({ about, least, most }) => about === null && least === null && most !== null)
  // The word before it says that it is a limit.
  const bare = (one: WantedAt): WantedAt => (isLimit ? { ...one, about: one.most } : one)
  const values = at.map((one) => wantedValue(bare(one), quantityOf(group)))
  return { label: isLimit ? 'limit' : 'wanted', value: atEach(at, values) }
}

/** "Seat width" · "intake 0.0600 in, exhaust 0.0800 in" · "for this job" */
export function wantedLine({ group, at }: WantedLine): BenchLine {
  const value = atEach(
    at,
    at.map((one) => wantedValue(one, quantityOf(group))),
  )
  const places = at.map(({ about, least, most }) => (about ?? least ?? most)?.from)
  const one = places.every((place) => place === places[0])
  const note = at.flatMap(({ port }, nth) => {
    const place = places[nth]
    return place && (nth === 0 || !one) ? [one ? placeWords[place] : `${port}: ${placeWords[place]}`] : []
  })
  return { label: groupWords[group], value, note: note.join(', ') }
}

/** Beside a cell: "0.0600 in (0.0500 to 0.0700)", "at most 0.0020 in". */
export function wantedSpanWords({ value, low, high }: Omit<WantedSpan, 'room'>, quantity: Quantity): string {
  if (value !== null && low !== null && high !== null) {
    return `${formatFigure(value, quantity)} (${formatBare(low, quantity)} to ${formatBare(high, quantity)})`
  }
  if (high !== null) return `at most ${formatFigure(high, quantity)}`
  return low === null ? '' : `at least ${formatFigure(low, quantity)}`
}

/** For paper: "Wanted: seat angle 45.0°, both; seat width intake 0.0600 in, exhaust 0.0800 in"; '' where nothing is. */
export function wantedSentence(lines: readonly WantedLine[]): string {
  const told = lines.map(wantedLine).map(({ label, value }) => `${lower(label)} ${value}`)
  return told.length === 0 ? '' : `Wanted: ${told.join('; ')}`
}

const labelOf = (key: WantedKey): string => wantedFigures[key].label

/** What contradicts itself, at the field that it is told at. */
export function wantedFaultWords({ code, key, than, value, other }: WantedFault): string {
  const { quantity } = wantedFigures[key]
  const [one, two] = [formatFigure(value, quantity), formatFigure(other, quantity)]
  switch (code) {
    case 'least-over-most':
      return `The least clearance, ${one}, is more than the most, ${two}. Check both.`
    case 'open-under-seat':
      return `The pressure on the seat, ${one}, is more than with the valve open, ${two}. Check both.`
    case 'bind-over-height':
      return `Height at coil bind, ${one}, is not under the installed height, ${two}. Check both.`
    case 'bind-before-lift':
      return `The ${labelOf(key)} of ${one} is more than the spring allows: ${labelOf(than)} leaves ${two} to coil bind.`
  }
}

/** Wanted figures as lines, and what contradicts itself among them. */
export type WantedWords = { readonly lines: readonly BenchLine[]; readonly faults: readonly string[] }

/** Everything that is wanted of one head, each with where it comes from. */
export const wantedWords = (wanted: Wanted): WantedWords => ({
  lines: allWanted(wanted).map(wantedLine),
  faults: wantedFaults(wanted).map(wantedFaultWords),
})

/** What one place alone says: where it comes from goes without saying. */
export function wantedWordsOf(figures: WantedFigures): WantedWords {
  const { lines, faults } = wantedWords(wantedOf({ head: figures, job: {}, casting: {}, shop: {} }))
  return { lines: lines.map((line) => ({ ...line, note: '' })), faults }
}
