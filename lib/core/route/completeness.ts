import { pointLabel } from '../readings/points'
import type { ReadingFact, ReadingKind } from '../readings/types'
import { routeInDetail, stopsOf, type DetailedStep } from './compute-route'
import { gapPoints, readingGaps, stepGap, toleranceGap } from './gaps'
import { keyOf } from './keys'
import { tableOf } from './table'
import { pointOwed } from './words'
import type { Missing, RouteFacts } from './types'
import { mean } from '../mean'

export type CompletenessInput = {
  /** Names of gaps that the owner let pass, beside those in the facts. */
  readonly waivedGaps?: readonly string[]
  /** Finished cc of the other heads of the pair, for the match; absent or empty: no mate measured. */
  readonly mateCc?: readonly number[]
}

/**
 * Everything that stands between a visit and its release, in words, in working order: steps not done, readings owed,
 * figures out of tolerance, open holds, findings without an answer. Hand over comes after release and is not asked for.
 * What the owner waived is left out; holds and findings are decided, not waived. Empty: it may be released.
 *
 * Volumes in cc, lengths in inches. Example: target 60.0 ± 0.5, chamber 2 finished at 61.3 → "chamber 2 is 1.3 cc over the
 * target of 60 (tolerance 0.5)".
 */
export function completeness(original: RouteFacts, { waivedGaps = [] }: CompletenessInput = {}): Missing[] {
  const waived = new Set([...(original.waivedGaps ?? []), ...waivedGaps])
  const facts: RouteFacts = waivedGaps.length === 0 ? original : { ...original, waivedGaps: [...waived] }
  const route = routeInDetail(facts).filter((step) => step.state !== 'not needed' && step.stepId !== 'hand-over')
  const needed = route.filter((step) => step.needed && step.state !== 'waived')
  const found: Missing[] = []
  for (const step of needed) found.push(...stepMissing(step), ...readingsMissing(step), ...stopped(step))
  for (const step of needed) found.push(...outOfTolerance(step, facts))
  found.push(...undecided(facts))
  return found.filter((missing) => !waived.has(missing.gap) || missing.what === 'hold' || missing.what === 'finding')
}

/** What the owner should know before releasing, and may let pass without a waiver. The mate's state is not known here. */
export function completenessWarnings(facts: RouteFacts, { mateCc = [] }: CompletenessInput = {}): string[] {
  const own = finishedCc(routeInDetail(facts)).map((reading) => reading.value)
  const values = [...own, ...mateCc]
  if (own.length === 0 || values.length < 2) return []
  const meanCc = mean(values)
  const worstCc = Math.max(...values.map((value) => Math.abs(value - meanCc)))
  if (worstCc <= facts.settings.ccMatchCc + rounding) return []
  const whose = mateCc.length > 0 ? 'the pair' : 'this head'
  return [
    `The chambers of ${whose} do not match: one is ${figure(worstCc)} cc from the mean (match ${facts.settings.ccMatchCc}).`,
  ]
}

/** Decimals are not exact in binary: 60.5 is still within 0.5 of 60. */
const rounding = 1e-9
const figure = (value: number): string => String(Number(value.toFixed(2)))
const formatInches = (inches: number): string => `${inches.toFixed(4)} in`

const settled = (step: DetailedStep): boolean => step.state === 'done' || step.state === 'waived'

function stepMissing(step: DetailedStep): Missing[] {
  if (settled(step)) return []
  const message =
    step.state === 'do again' ? `${step.label} must be done again: ${step.reason}` : `${step.label} is not done`
  return [missingAt(step, message, 'step', stepGap(step, step.since))]
}

function readingsMissing(step: DetailedStep): Missing[] {
  const found: Missing[] = []
  const gaps = readingGaps(step, step.since)
  for (const { kind, missing } of step.owes) {
    for (const point of gapPoints(kind, missing)) {
      found.push(missingAt(step, owedWords(step, kind, point), 'reading', `${gaps}${kind}:${point}`))
    }
  }
  return found
}

const owedWords = (step: DetailedStep, kind: ReadingKind, point: string): string =>
  step.stepId === 'finished' && kind === 'cc'
    ? `${pointLabel(point)} has no finished cc`
    : `${step.label}: ${pointOwed(kind, point)}`

/** Written out, not spread from the step: a check for release makes a hundred of these. */
const missingAt = (step: DetailedStep, message: string, what: Missing['what'], gap: string): Missing => ({
  step: { stepId: step.stepId, occurrence: step.occurrence, orderId: step.orderId },
  label: step.label,
  message,
  what,
  gap,
})

const out = (step: DetailedStep, what: string, readingId: string, message: string): Missing =>
  missingAt(step, message, 'tolerance', toleranceGap(step, what, readingId))

/** An answer that says stop, at a step that was ticked before the answer was corrected. */
const stopped = (step: DetailedStep): Missing[] =>
  step.counted.flatMap((reading) =>
    stopsOf(step, reading).map((words) => out(step, reading.kind, reading.id, `${step.label}: ${words}`)),
  )

function outOfTolerance(step: DetailedStep, facts: RouteFacts): Missing[] {
  if (step.stepId === 'finished') {
    return [
      ...valued(step.counted, 'cc').flatMap((reading) => ccOut(step, reading, facts)),
      ...valued(step.counted, 'straightness').flatMap((reading) => straightnessOut(step, reading, facts)),
    ]
  }
  return step.stepId === 'seat-after'
    ? valued(step.counted, 'seat-depth').flatMap((reading) => seatOut(step, reading, facts))
    : []
}

type Valued = ReadingFact & { readonly value: number }

const valued = (readings: readonly ReadingFact[], kind: ReadingKind): Valued[] =>
  readings.filter((reading): reading is Valued => reading.kind === kind && reading.value !== null)

const finishedCc = (route: readonly DetailedStep[]): Valued[] =>
  route.filter((step) => step.stepId === 'finished').flatMap((step) => valued(step.counted, 'cc'))

function ccOut(step: DetailedStep, { id, point, value }: Valued, facts: RouteFacts): Missing[] {
  const { targetCc, classMinCc, settings } = facts
  const tolerance = settings.ccToleranceCc
  const offCc = targetCc === null ? 0 : value - targetCc
  const side = offCc > 0 ? 'over' : 'under'
  const where = pointLabel(point)
  const target = `${where} is ${figure(Math.abs(offCc))} cc ${side} the target of ${targetCc} (tolerance ${tolerance})`
  const least = `${where} is ${figure((classMinCc ?? 0) - value)} cc under the class minimum of ${classMinCc}`
  return [
    ...(Math.abs(offCc) > tolerance + rounding ? [out(step, `cc:${point}`, id, target)] : []),
    ...(classMinCc !== null && value < classMinCc - rounding ? [out(step, `class:${point}`, id, least)] : []),
  ]
}

function straightnessOut(step: DetailedStep, { id, point, value }: Valued, facts: RouteFacts): Missing[] {
  const { straightAcrossIn, straightAlongPerCylinderIn } = facts.settings
  const limitIn = point === 'along' ? straightAlongPerCylinderIn * facts.chambers : straightAcrossIn
  if (value <= limitIn + rounding) return []
  return [
    out(
      step,
      `straightness:${point}`,
      id,
      `straightness ${point} is ${formatInches(value)} (limit ${formatInches(limitIn)})`,
    ),
  ]
}

function seatOut(step: DetailedStep, { id, point, value }: Valued, facts: RouteFacts): Missing[] {
  const { sealingMarginIn } = facts.settings
  if (value >= sealingMarginIn - rounding) return []
  const message = `${pointLabel(point)} seat is ${formatInches(value)} from the deck (least ${formatInches(sealingMarginIn)})`
  return [out(step, `seat-depth:${point}`, id, message)]
}

function undecided({ openHolds, openFindings, settings }: RouteFacts): Missing[] {
  const final = { step: keyOf('final'), label: tableOf(settings.rules).rowOf('final').label }
  const count = openFindings === 1 ? 'a finding waits' : `${openFindings} findings wait`
  const findings: Missing[] =
    openFindings > 0
      ? [{ ...final, message: `${count} for the customer’s answer`, what: 'finding', gap: 'findings' }]
      : []
  return [
    ...openHolds.map(({ reason }, place): Missing => ({
      ...final,
      message: `on hold: ${reason}`,
      what: 'hold',
      gap: `hold:${place + 1}`,
    })),
    ...findings,
  ]
}
