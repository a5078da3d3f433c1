import { wantedFigures, wantedKeys, type WantedGroup, type WantedKey, type WantedPort } from './figures'
import { toleranceOf, type WantedTolerances } from './tolerances'
import type { Wanted } from './wanted-of'

export type WantedSpan = {
  /** Null: only an end is wanted. */
  readonly value: number | null
  /** In tolerance from low to high, in the core's unit; null: no limit on that side. */
  readonly low: number | null
  readonly high: number | null
  /** One tolerance: how far beyond an end a reading is by one more. */
  readonly room: number
}

/** Which key holds which part of a figure: "seat-width intake about". */
const keysOf: ReadonlyMap<string, WantedKey> = new Map(
  wantedKeys.map((key) => {
    const { group, port, part } = wantedFigures[key]
    return [`${group} ${port} ${part}`, key]
  }),
)

/**
 * What is in tolerance of a wanted figure, in the core's unit of its quantity.
 *
 * @param port of the figure; null: of the head
 * @returns null where nothing is wanted, or where the shop has no tolerance for it
 *
 * About a figure: value ± tolerance. Of a range: least to most, its middle as the value, and half of it as the room, or the
 * tolerance where that is more. Of a limit: up to it, the limit as the room. Derived: as said.
 * Example: seat width 0.060, tolerance 0.010 → 0.050 to 0.070; guide 0.0010 to 0.0020 → 0.0015, room 0.0005.
 */
export function wantedSpan(
  group: WantedGroup,
  port: (typeof wantedFigures)[WantedKey]['port'],
  wanted: Wanted,
  shop: WantedTolerances,
): WantedSpan | null {
  const at = (part: 'about' | 'least' | 'most'): number | null => {
    const key = keysOf.get(`${group} ${port} ${part}`)
    return (key && wanted[key]?.value) ?? null
  }
  const about = at('about')
  if (about !== null) {
    const room = toleranceOf(group, about, shop)
    return room === null ? null : { value: about, low: about - room, high: about + room, room }
  }
  const [low, high] = [at('least'), at('most')]
  if (low !== null && high !== null) {
    const room = Math.max((high - low) / 2, toleranceOf(group, high, shop) ?? 0)
    return { value: (low + high) / 2, low, high, room }
  }
  return low === null && high === null ? null : { value: null, low, high, room: high ?? 0 }
}

/**
 * Both ports together, for a reading that does not say of which port it is: from the lower low to the higher high.
 *
 * Derived: what is in tolerance at either port. Example: seat pressure 130 intake, 150 exhaust, 10 % → 117 to 165.
 */
export function ofEitherPort(spans: Readonly<Record<WantedPort, WantedSpan | null>>): WantedSpan | null {
  const { intake, exhaust } = spans
  if (intake === null || exhaust === null) return intake ?? exhaust
  const end = (one: number | null, other: number | null, pick: (a: number, b: number) => number): number | null =>
    one === null || other === null ? null : pick(one, other)
  return {
    value: end(intake.value, exhaust.value, (a, b) => (a + b) / 2),
    low: end(intake.low, exhaust.low, Math.min),
    high: end(intake.high, exhaust.high, Math.max),
    room: Math.max(intake.room, exhaust.room),
  }
}

/**
 * What is still believed at once of a reading that should lie in a span: so many tolerances from the wanted figure.
 *
 * @param times tolerances, at least 1; @returns null where the wanted figure has no upper end
 *
 * low − (times − 1)·room to high + (times − 1)·room. Derived: the ends lie one room from the figure, or one limit from
 * nothing. Example: 0.060 ± 0.010, three times → 0.030 to 0.090; runout up to 0.002 → up to 0.006.
 */
export function believed(span: WantedSpan, times: number): Omit<WantedSpan, 'room'> | null {
  if (span.high === null) return null
  const more = (times - 1) * span.room
  return { value: span.value, low: span.low === null ? null : span.low - more, high: span.high + more }
}
