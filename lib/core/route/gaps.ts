import type { ReadingKind } from '../readings/types'
import { keyText } from './keys'
import type { StepKey } from './step-ids'

/**
 * Names of gaps, so that a waiver can point at one. `since` is the number of the event that last undid the step: what was
 * let pass before is not let pass again after later work.
 */
const round = (since: number): string => (since > 0 ? `@${since}` : '')

export const stepGap = (key: StepKey, since: number): string => `step:${keyText(key)}${round(since)}`

export const readingGap = (key: StepKey, since: number, kind: ReadingKind, point: string): string =>
  `${readingGaps(key, since)}${kind}:${point}`

/** What the names of all reading gaps of one step begin with. */
export const readingGaps = (key: StepKey, since: number): string => `reading:${keyText(key)}${round(since)}:`

/** Bound to the reading: another reading that is out needs another waiver. */
export const toleranceGap = (key: StepKey, what: string, readingId: string): string =>
  `tolerance:${keyText(key)}:${what}:${readingId}`

/** One lift of a port answers for the port: how many are worth flowing is the machinist's choice. */
export const placeOf = (kind: ReadingKind, point: string): string =>
  kind === 'flow' && point.includes('@') ? point.slice(0, point.indexOf('@')) : point

/** The points that are gaps of their own. */
export const gapPoints = (kind: ReadingKind, points: readonly string[]): readonly string[] =>
  kind === 'flow' ? [...new Set(points.map((point) => placeOf(kind, point)))] : points
