import type { StepKey } from '../route/step-ids'
import type { OwnRepeats } from './burette'
import type { ChamberChange } from './changes'
import { tallyOf } from './repeatability'

/** A cc reading, as far as it matters whether it repeats another. */
export type CcReading = {
  readonly id: string
  readonly seq: number
  readonly kind: string
  readonly point: string
  readonly value: number | null
  readonly step: StepKey
  readonly byId?: string
  readonly instrumentId?: string | null
}

/** Whether something changed a chamber between two of its readings at one step. */
const changedBetween = (from: CcReading, to: CcReading, changes: readonly ChamberChange[]): boolean =>
  changes.some(({ seq, stepId }) => seq > from.seq && seq <= to.seq && stepId !== to.step.stepId)

const placeOf = ({ step, point }: CcReading): string =>
  [step.stepId, step.occurrence, step.orderId ?? '', point].join('|')

/**
 * The cc readings in sets of repeats: one step, one point, nothing changed between.
 *
 * @param readings that stand, oldest first; other kinds and those not taken are passed over
 * @returns sets in the order in which each began, its readings oldest first
 *
 * Example: chamber 1 read 62.1, 62.3, then seat work, then 62.5 → two sets: 62.1 and 62.3; 62.5.
 * Derived: the order of events.
 */
export function repeatSets<R extends CcReading>(
  readings: readonly R[],
  changes: readonly ChamberChange[],
): readonly (readonly R[])[] {
  const open = new Map<string, R[]>()
  const sets: R[][] = []
  for (const reading of readings) {
    if (reading.kind !== 'cc' || reading.value === null) continue
    const place = placeOf(reading)
    const set = open.get(place)
    const last = set?.at(-1)
    if (set && last && !changedBetween(last, reading, changes)) set.push(reading)
    else {
      const begun = [reading]
      open.set(place, begun)
      sets.push(begun)
    }
  }
  return sets
}

/**
 * Of each chamber at each step the repeats that count now: the last set.
 *
 * Example: as for `repeatSets`, 62.5 alone. Derived: the last of `repeatSets` at each place.
 */
export function standingRepeats<R extends CcReading>(
  readings: readonly R[],
  changes: readonly ChamberChange[],
): readonly (readonly R[])[] {
  const last = new Map<string, readonly R[]>()
  for (const set of repeatSets(readings, changes)) last.set(placeOf(set[0] as R), set)
  return [...last.values()]
}

/**
 * Of each chamber at each step the repeats that count now, where the events are not at hand: a reading that was answered to
 * be "again" belongs to the one before it.
 *
 * Example: 62.1, then 62.3 marked "again" → one set; 61.0 not marked begins another. Derived: the marks of the readings.
 */
export function markedRepeats<R extends CcReading & { readonly repeat: string | null }>(
  readings: readonly R[],
): readonly (readonly R[])[] {
  const last = new Map<string, readonly R[]>()
  for (const reading of readings) {
    if (reading.kind !== 'cc' || reading.value === null) continue
    const place = placeOf(reading)
    last.set(place, reading.repeat === null ? [reading] : [...(last.get(place) ?? []), reading])
  }
  return [...last.values()]
}

/**
 * What a head's repeats teach of the spread of one reading: one tally for each chamber, condition, person and burette.
 *
 * @returns tallies in cc²; a set of one reading says nothing and is left out
 *
 * Example: chamber 1 read 62.1 and 62.3 by one person → one tally of 0.02 cc² with one degree of freedom.
 * Derived: `tallyOf` each part of `repeatSets`.
 */
export function repeatsOfHead(
  readings: readonly CcReading[],
  changes: readonly ChamberChange[],
): readonly OwnRepeats[] {
  return repeatSets(readings, changes).flatMap((set) => {
    const hands = new Map<string, CcReading[]>()
    for (const reading of set) {
      const hand = `${reading.byId ?? ''}|${reading.instrumentId ?? ''}`
      hands.set(hand, [...(hands.get(hand) ?? []), reading])
    }
    return [...hands.values()].flatMap((one) => {
      const tally = tallyOf(one.flatMap(({ value }) => value ?? []))
      return tally.degrees === 0 ? [] : [{ ids: set.map(({ id }) => id), tally }]
    })
  })
}
