import { parseFigure } from '../units/parse-figure'
import type { Quantity } from '../units/quantities'

/** How a wrong figure likely came about. */
export type SlipKind =
  | 'point' // another place of the decimal point
  | 'thou' // thou for inches, or the other way about
  | 'digits' // two digits next to each other swapped
  | 'neighbour' // the figure of another cell

export type Slip = {
  readonly kind: SlipKind
  /** What was likely meant, in the form that was typed: "63.9". */
  readonly text: string
  readonly value: number
}

export type Typed = { readonly text: string; readonly unit: string; readonly value: number }

/**
 * What was likely meant by an unlikely figure: the first of the likely slips that would be believed.
 *
 * @param typed as it was typed; @param isLikely whether a figure lies inside what is expected
 * @param neighbours what stands in those other cells of its kind where this figure would be believed
 * @returns null when no likely slip is believed
 *
 * Example: 6.39 where 62.4 to 65.4 is expected → 63.9, the decimal point.
 * Derived: each slip undone, in the order of how often it happens, from memory.
 */
export function likelySlip(
  typed: Typed,
  quantity: Quantity,
  isLikely: (value: number) => boolean,
  neighbours: readonly Typed[],
): Slip | null {
  for (const { kind, text } of [...undone(typed.text), ...neighbours.map(({ text: other }) => neighbour(other))]) {
    const parsed = parseFigure(text, quantity, typed.unit)
    if (!parsed.ok || parsed.value.value === typed.value || !isLikely(parsed.value.value)) continue
    return { kind, text, value: parsed.value.value }
  }
  return null
}

const neighbour = (text: string): Candidate => ({ kind: 'neighbour', text })

type Candidate = { readonly kind: SlipKind; readonly text: string }

/** Sign, figure and what follows it; fractions are not slips of a point. */
const plainFigure = /^([+−–-]?\s*)(\d*[.,]?\d*)(\s*[^\d./,\s].*)?$/

function undone(text: string): Candidate[] {
  const [, sign = '', figure = '', rest = ''] = plainFigure.exec(text.trim()) ?? []
  if (!/\d/.test(figure)) return []
  const say = (kind: SlipKind) => (changed: string) => ({ kind, text: `${sign}${changed}${rest}` })
  return [
    ...[1, -1, 2, -2].map((places) => movePoint(figure, places)).map(say('point')),
    ...[3, -3].map((places) => movePoint(figure, places)).map(say('thou')),
    ...swapped(figure).map(say('digits')),
  ]
}

/**
 * The same digits with the decimal point so many places to the right; to the left below zero.
 *
 * By definition: times ten to that power, no digit lost. Example: ".014" by 1 → ".14"; "63.9" by −1 → "6.39".
 */
export function movePoint(figure: string, places: number): string {
  const [whole = '', decimals = ''] = figure.replace(',', '.').split('.')
  const digits = `${'0'.repeat(Math.max(0, -places))}${whole}${decimals}${'0'.repeat(Math.max(0, places))}`
  const at = Math.max(0, -places) + whole.length + places
  const before = digits.slice(0, at).replace(/^0+(?=\d)/, '')
  const after = digits.slice(at, at + Math.max(0, decimals.length - places))
  const lead = before === '0' && after !== '' ? '' : before
  return after === '' ? before || '0' : `${lead}.${after}`
}

/** Every pair of unlike digits that stand next to each other, swapped; the point stays where it is. */
function swapped(figure: string): string[] {
  const places = [...figure].flatMap((sign, at) => (/\d/.test(sign) ? [at] : []))
  return places.flatMap((at, nth) => {
    const next = places[nth + 1]
    if (next === undefined || figure[at] === figure[next]) return []
    const signs = [...figure]
    signs[at] = figure[next] ?? ''
    signs[next] = figure[at] ?? ''
    return [signs.join('')]
  })
}
