import { cornerNames } from '@/lib/core/straightness/corners-fit'
import { keyText } from '@/lib/core/route/keys'
import type { StepId } from '@/lib/core/route/step-ids'
import { formatFigure } from '@/lib/core/units/format-figure'
import { typedFigure } from '@/lib/core/units/typed-figure'
import type { EffectiveReading } from '@/lib/core/readings/effective'
import type { VisitReadings } from './chamber-trend'

/** The corners as measured at one stage, and the metal gone since new there. */
export type ThicknessStage = {
  readonly id: string
  readonly jobNumber: string
  readonly label: string
  /** As typed, in the order of `cornerNames`; null: not measured. */
  readonly corners: readonly (string | null)[]
  /** At the thinnest corner; null: the new thickness is not known. */
  readonly gone: string | null
}

export type ThicknessTrend = {
  readonly stages: readonly ThicknessStage[]
  /** "0.0180 in at the deepest", with how it is known. */
  readonly removed: string
}

const stageLabels: Partial<Readonly<Record<StepId, string>>> = {
  thickness: 'as came',
  'arrival-figures': 'back from outside',
  finished: 'finished',
}

type Draft = {
  readonly key: string
  readonly jobNumber: string
  readonly label: string
  readonly byCorner: Map<string, EffectiveReading & { value: number }>
  lastSeq: number
}

/** Thickness at the corners over all visits, and what is gone of the head since it was new, in inches. */
export function thicknessTrend(visits: readonly VisitReadings[], newIn: number | null): ThicknessTrend {
  const drafts = visits.flatMap(draftsOf)
  return {
    stages: drafts.map((draft) => ({
      id: draft.key + draft.label,
      jobNumber: draft.jobNumber,
      label: draft.label,
      corners: cornerNames.map((corner) => {
        const reading = draft.byCorner.get(corner)
        return reading ? typedFigure(reading) : null
      }),
      gone: newIn === null ? null : depth(newIn - thinnest(draft)),
    })),
    removed: removedWords(visits, drafts, newIn),
  }
}

function draftsOf({ jobNumber, readings }: VisitReadings): Draft[] {
  const drafts: Draft[] = []
  for (const reading of readings) {
    if (reading.kind !== 'thickness' || reading.value === null) continue
    const key = `${jobNumber} ${keyText(reading.step)}`
    const same = drafts.filter((draft) => draft.key === key)
    const open = same.at(-1)
    const label = `${stageLabels[reading.step.stepId] ?? reading.step.stepId}${open ? ' again' : ''}`
    const draft =
      open && !open.byCorner.has(reading.point)
        ? open
        : { key, jobNumber, label, byCorner: new Map(), lastSeq: reading.seq }
    if (draft !== open) drafts.push(draft)
    draft.byCorner.set(reading.point, { ...reading, value: reading.value })
    draft.lastSeq = reading.seq
  }
  return drafts
}

const depth = (inches: number): string => formatFigure(Math.max(0, inches), 'cutDepth')
const thinnest = (draft: Draft): number => Math.min(...[...draft.byCorner.values()].map(({ value }) => value))

/** Metal that went at the machines after the corners were last measured, at the deepest edge of each visit's cuts. */
function cutSince(visits: readonly VisitReadings[], seq: number): number {
  const later = ({ readings }: VisitReadings, kind: 'cut-depth' | 'edge-depth') =>
    readings.filter((reading) => reading.kind === kind && reading.value !== null && reading.seq > seq)
  return visits.reduce((sum, visit) => {
    const flatIn = later(visit, 'cut-depth').at(-1)?.value ?? 0
    const edges = new Map(later(visit, 'edge-depth').map((reading) => [reading.point, reading.value ?? 0]))
    return sum + flatIn + Math.max(0, ...edges.values())
  }, 0)
}

function removedWords(visits: readonly VisitReadings[], drafts: readonly Draft[], newIn: number | null): string {
  const [first, last] = [drafts[0], drafts.at(-1)]
  const sinceIn = cutSince(visits, last?.lastSeq ?? 0)
  const bySetting = sinceIn > 0 ? `, ${depth(sinceIn)} of it by the depth cut since the corners were measured` : ''
  if (!first || !last) {
    return sinceIn === 0 ? 'Thickness not measured yet.' : `${depth(sinceIn)} cut here; thickness not measured.`
  }
  const fromIn = newIn ?? thinnest(first)
  const goneIn = fromIn - thinnest(last) + sinceIn
  const since = newIn === null ? 'since it first came; new thickness not known' : 'since new'
  return `${depth(goneIn)} at the deepest ${since}${bySetting}.`
}
