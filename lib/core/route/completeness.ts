import type { ReadingFact, ReadingKind } from '../readings/types'
import type { Lack, ReleaseWarning } from './codes'
import { routeInDetail, stopsOf, type DetailedStep } from './compute-route'
import { pastMaker, type FlatDeckFacts } from '../flat-deck/past-maker'
import { gapPoints, readingGaps, stepGap, toleranceGap } from './gaps'
import { keyOf, keyText } from './keys'
import { tableOf } from './table'
import type { Missing, RouteFacts } from './types'
import { mean } from '../mean'
import { valvesOut } from './valves-out'

export type CompletenessInput = {
  /** Names of gaps that the owner let pass, beside those in the facts. */
  readonly waivedGaps?: readonly string[]
  /** Finished cc of the other heads of the pair, for the match; absent or empty: no mate measured. */
  readonly mateCc?: readonly number[]
}

/**
 * Everything that stands between a visit and its release, in working order: steps not done, readings owed,
 * figures out of tolerance, open holds, findings without an answer. Hand over comes after release and is not asked for.
 * What the owner waived is left out; holds and findings are decided, not waived. Empty: it may be released.
 *
 * Volumes in cc, lengths in inches. Example: target 60.0 ± 0.5, chamber 2 finished at 61.3 → off the
 * target by 1.3 cc.
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
export function completenessWarnings(facts: RouteFacts, { mateCc = [] }: CompletenessInput = {}): ReleaseWarning[] {
  const own = finishedCc(routeInDetail(facts)).map((reading) => reading.value)
  const values = [...own, ...mateCc]
  if (own.length === 0 || values.length < 2) return []
  const meanCc = mean(values)
  const worstCc = Math.max(...values.map((value) => Math.abs(value - meanCc)))
  if (worstCc <= facts.settings.ccMatchCc + rounding) return []
  const whose = mateCc.length > 0 ? 'pair' : 'head'
  return [{ code: 'no-match', whose, worstCc, matchCc: facts.settings.ccMatchCc }]
}

/**
 * The same in short: a step that is not done stands for the readings it would have had.
 *
 * Example: `finished` not done, its plug and chamber 1 missing → `finished` not done.
 */
export const inShort = (missing: readonly Missing[]): Missing[] => {
  const undone = new Set(missing.filter(({ lack }) => lack.code === 'not-done').map(({ step }) => keyText(step)))
  return missing.filter(({ what, step }) => what !== 'reading' || !undone.has(keyText(step)))
}

/** Decimals are not exact in binary: 60.5 is still within 0.5 of 60. */
const rounding = 1e-9

const settled = (step: DetailedStep): boolean => step.state === 'done' || step.state === 'waived'

function stepMissing(step: DetailedStep): Missing[] {
  if (settled(step)) return []
  const { label, reason } = step
  const lack: Lack = step.state === 'do again' ? { code: 'redo', label, reason } : { code: 'not-done', label }
  return [missingAt(step, lack, 'step', stepGap(step, step.since))]
}

function readingsMissing(step: DetailedStep): Missing[] {
  const found: Missing[] = []
  const gaps = readingGaps(step, step.since)
  for (const { kind, missing } of step.owes) {
    for (const point of gapPoints(kind, missing)) {
      found.push(missingAt(step, readingLack(step, kind, point), 'reading', `${gaps}${kind}:${point}`))
    }
  }
  return found
}

const readingLack = ({ stepId, label }: DetailedStep, kind: ReadingKind, point: string): Lack =>
  stepId === 'finished' && kind === 'cc' ? { code: 'finished-cc', point } : { code: 'reading', label, kind, point }

/** Written out, not spread from the step: a check for release makes a hundred of these. */
const missingAt = (step: DetailedStep, lack: Lack, what: Missing['what'], gap: string): Missing => ({
  step: { stepId: step.stepId, occurrence: step.occurrence, orderId: step.orderId },
  label: step.label,
  lack,
  what,
  gap,
})

const out = (step: DetailedStep, what: string, readingId: string, lack: Lack): Missing =>
  missingAt(step, lack, 'tolerance', toleranceGap(step, what, readingId))

/** An answer that says stop, at a step that was ticked before the answer was corrected. */
const stopped = (step: DetailedStep): Missing[] =>
  step.counted.flatMap((reading) =>
    stopsOf(step, reading).map((stop) =>
      out(step, reading.kind, reading.id, { code: 'stop', label: step.label, ...stop }),
    ),
  )

const outOfTolerance = (step: DetailedStep, facts: RouteFacts): Missing[] => [
  ...ofDeck(step, facts),
  ...valvesOut(step.counted, facts).map(({ kind, reading: { id, point }, side, value, limit }) =>
    out(step, `${kind}:${point}`, id, { code: 'valve-out', kind, point, side, value, limit }),
  ),
]

/** Chambers, deck, and how the seats lie to it. */
function ofDeck(step: DetailedStep, facts: RouteFacts): Missing[] {
  if (facts.flatDeck) return ofFlatDeck(step, facts, facts.flatDeck)
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

/** A flat-deck head is judged by thickness, recession and protrusion, by whatever limits are on record. */
function ofFlatDeck(step: DetailedStep, facts: RouteFacts, { limits }: FlatDeckFacts): Missing[] {
  if (step.stepId !== 'finished' && step.stepId !== 'seat-after') return []
  return [
    ...(step.stepId === 'finished'
      ? valued(step.counted, 'straightness').flatMap((reading) => straightnessOut(step, reading, facts))
      : []),
    ...step.counted.flatMap((reading) => {
      const past = pastMaker(reading, limits)
      if (!past) return []
      const { kind, point, id } = reading
      return [out(step, `${kind}:${point}`, id, { code: 'past-maker', point, ...past })]
    }),
  ]
}

type Valued = ReadingFact & { readonly value: number }

const valued = (readings: readonly ReadingFact[], kind: ReadingKind): Valued[] =>
  readings.filter((reading): reading is Valued => reading.kind === kind && reading.value !== null)

const finishedCc = (route: readonly DetailedStep[]): Valued[] =>
  route.filter((step) => step.stepId === 'finished').flatMap((step) => valued(step.counted, 'cc'))

function ccOut(step: DetailedStep, { id, point, value }: Valued, facts: RouteFacts): Missing[] {
  const { targetCc, classMinCc, settings } = facts
  const toleranceCc = settings.ccToleranceCc
  const offCc = targetCc === null ? 0 : value - targetCc
  const found: Missing[] = []
  if (targetCc !== null && Math.abs(offCc) > toleranceCc + rounding) {
    found.push(out(step, `cc:${point}`, id, { code: 'off-target', point, offCc, targetCc, toleranceCc }))
  }
  if (classMinCc !== null && value < classMinCc - rounding) {
    const shortCc = classMinCc - value
    found.push(out(step, `class:${point}`, id, { code: 'under-class', point, shortCc, minCc: classMinCc }))
  }
  return found
}

function straightnessOut(step: DetailedStep, { id, point, value }: Valued, facts: RouteFacts): Missing[] {
  const { straightAcrossIn, straightAlongPerCylinderIn } = facts.settings
  const limitIn = point === 'along' ? straightAlongPerCylinderIn * facts.chambers : straightAcrossIn
  if (value <= limitIn + rounding) return []
  return [out(step, `straightness:${point}`, id, { code: 'not-straight', point, valueIn: value, limitIn })]
}

function seatOut(step: DetailedStep, { id, point, value }: Valued, facts: RouteFacts): Missing[] {
  const { sealingMarginIn } = facts.settings
  if (value >= sealingMarginIn - rounding) return []
  return [
    out(step, `seat-depth:${point}`, id, { code: 'seat-near-deck', point, valueIn: value, minIn: sealingMarginIn }),
  ]
}

function undecided({ openHolds, openFindings, settings }: RouteFacts): Missing[] {
  const final = { step: keyOf('final'), label: tableOf(settings.rules).rowOf('final').label }
  const findings: Missing[] =
    openFindings > 0
      ? [{ ...final, lack: { code: 'findings', count: openFindings }, what: 'finding', gap: 'findings' }]
      : []
  return [
    ...openHolds.map(({ reason }, place): Missing => ({
      ...final,
      lack: { code: 'hold', reason },
      what: 'hold',
      gap: `hold:${place + 1}`,
    })),
    ...findings,
  ]
}
