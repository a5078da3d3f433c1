import { readingSpecs } from '@/lib/core/readings/specs'
import { keyText } from '@/lib/core/route/keys'
import type { StepId } from '@/lib/core/route/step-ids'
import { listed, lower } from '@/lib/core/route/words'
import type { EffectiveReading } from '@/lib/core/readings/effective'

/** What one visit brings to the trends of its head, its answers oldest first. */
export type VisitReadings = {
  readonly jobNumber: string
  readonly readings: readonly EffectiveReading[]
  readonly target: { readonly text: string; readonly cc: number; readonly toleranceCc: number } | null
}

/** All chambers that were measured at one go, in the order of the shop's work over all visits. */
export type ChamberStage = {
  readonly id: string
  readonly jobNumber: string
  /** "as came", "finished again" */
  readonly label: string
  /** By chamber, from 1; null: not measured here. */
  readonly ccs: readonly (number | null)[]
  /** The same as typed. */
  readonly texts: readonly (string | null)[]
  /** Whose valves and which plug were in; '' when nobody noted it. */
  readonly fitted: string
  /** Why it cannot be held against the stage before; '' when it can, or when it is the first. */
  readonly notLike: string
  readonly target: VisitReadings['target']
}

const stageLabels: Partial<Readonly<Record<StepId, string>>> = {
  chambers: 'as came',
  'open-chamber': 'opened',
  'arrival-figures': 'back from outside',
  finished: 'finished',
}

/** The mill reads chamber 1 at the stop and at size. */
const atMill: Readonly<Record<string, string>> = { 'at-stop': 'at first stop', 'at-size': 'at size' }

type Draft = {
  readonly key: string
  readonly label: string
  readonly step: string
  readonly byChamber: Map<number, EffectiveReading>
  lastSeq: number
}

/**
 * Chamber volumes over all visits. A chamber that is measured once more at the same step begins a new stage; chambers
 * entered one after the other belong to one.
 */
export function chamberTrend(visits: readonly VisitReadings[], chambers: number): ChamberStage[] {
  const stages = visits.flatMap((visit) => draftsOf(visit.readings).map((draft) => stageOf(draft, visit, chambers)))
  return stages.map((stage, place) => ({ ...stage, notLike: notLike(stages[place - 1], stage) }))
}

function draftsOf(readings: readonly EffectiveReading[]): Draft[] {
  const drafts: Draft[] = []
  for (const reading of readings) {
    if (reading.kind !== 'cc' || reading.value === null) continue
    const mill = atMill[reading.point]
    const chamber = mill === undefined ? Number(reading.point) : 1
    const key = `${keyText(reading.step)}${mill ?? ''}`
    const same = drafts.filter((draft) => draft.key === key)
    const open = same.at(-1)
    const draft = open && !open.byChamber.has(chamber) ? open : newDraft(reading, key, same.length)
    if (draft !== open) drafts.push(draft)
    draft.byChamber.set(chamber, reading)
    draft.lastSeq = reading.seq
  }
  return drafts
}

function newDraft({ step, point, seq }: EffectiveReading, key: string, before: number): Draft {
  const label = atMill[point] ?? stageLabels[step.stepId] ?? step.stepId.replaceAll('-', ' ')
  const again = before === 0 ? '' : before === 1 ? ' again' : ` again (${before})`
  return { key, label: `${label}${again}`, step: keyText(step), byChamber: new Map(), lastSeq: seq }
}

function stageOf(draft: Draft, visit: VisitReadings, chambers: number): ChamberStage {
  const most = Math.max(chambers, ...draft.byChamber.keys())
  const at = Array.from({ length: most }, (_, place) => draft.byChamber.get(place + 1) ?? null)
  return {
    id: `${visit.jobNumber} ${draft.key} ${draft.label}`,
    jobNumber: visit.jobNumber,
    label: draft.label,
    ccs: at.map((reading) => reading?.value ?? null),
    texts: at.map((reading) => reading?.text ?? null),
    fitted: fittedAt(visit.readings, draft.step, draft.lastSeq),
    notLike: '',
    target: visit.target,
  }
}

/** Valves and plug as they were when the chambers were read; noted a moment later, they are still those. */
export function fittedAt(readings: readonly EffectiveReading[], step: string, seq: number): string {
  return (['valves-used', 'plug-used'] as const)
    .flatMap((kind) => {
      const own = readings.filter((reading) => reading.kind === kind && keyText(reading.step) === step)
      const found = own.findLast((reading) => reading.seq <= seq) ?? own[0]
      if (!found) return []
      const chosen = readingSpecs[kind].choices?.find((choice) => choice.value === found.text)
      return [lower(chosen?.label ?? found.text)]
    })
    .join(', ')
}

function notLike(before: ChamberStage | undefined, { fitted }: ChamberStage): string {
  if (!before || before.fitted === fitted) return before && fitted === '' ? 'valves and plug not noted' : ''
  const missing = [before.fitted === '' ? 'before' : '', fitted === '' ? 'here' : ''].filter(Boolean)
  return missing.length > 0 ? `valves and plug not noted ${listed(missing)}` : `${fitted} here, ${before.fitted} before`
}
