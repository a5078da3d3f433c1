import { typedFigure } from '@/lib/core/units/typed-figure'
import { chamberShapeOf, type ChamberShape } from '@/lib/core/casting/chamber-shape'
import type { CastingFacts } from '@/lib/core/casting/figures'
import type { CutLimits, HeadNow } from '@/lib/core/cut/plan'
import type { EngineFacts } from '@/lib/core/engine/figures'
import { must, RefusedError } from '@/lib/core/errors'
import { landOf } from '@/lib/core/options/inputs-of'
import { rateOfRecord } from '@/lib/core/rate/rate-of-record'
import type { Reader } from '@/lib/data/db'
import { loadDossiers, type Dossier } from './dossier'
import { learnedRecord, shownRate, type ShownRate } from './casting-rate'
import { headNow, type Present } from './head-now'
import { newThicknessIn } from './metal-gone'
import { mean } from '@/lib/core/mean'

/** Everything a plan is computed from, for the live form and the server alike. */
export type PlanContext = {
  readonly pairId: string
  readonly jobNumber: string
  readonly casting: CastingFacts
  readonly castingName: string
  readonly deepEdge: 'intake' | 'exhaust'
  readonly chamberShape: ChamberShape
  readonly engine: EngineFacts
  readonly heads: readonly HeadNow[]
  readonly presentNominal: boolean
  readonly targetCc: number | null
  readonly targetText: string
  readonly toleranceCc: number
  readonly marginCc: number
  readonly thouPerCc: number
  readonly rateProven: boolean
  readonly rateWords: string
  readonly rate: ShownRate
  readonly limits: CutLimits
  readonly ptvLeastIn: { readonly intake: number; readonly exhaust: number }
  readonly sealingMarginIn: number
  /** Flat-deck heads: the thickness that was asked for when they were booked; null: heads with chambers. */
  readonly flatDeck: { readonly wantedThicknessIn: number | null } | null
  readonly wantedThicknessText: string
}

/** The heads of a pair that a plan is for: those that are still to be cut, by their place on the job. */
export async function headsOfPair(reader: Reader, pairId: string): Promise<[Dossier, ...Dossier[]]> {
  const all = await loadDossiers(reader, { pairId })
  const [first, ...others] = all.filter(
    ({ visit }) => visit.scrappedAt === null && visit.returned === null && visit.takenOffAt === null,
  )
  if (first) return [first, ...others]
  throw new RefusedError({ code: 'not-found', message: 'No heads found to plan a cut for.' })
}

/** By the limits of the day that the first of them was booked. */
export async function planContext(reader: Reader, heads: readonly [Dossier, ...Dossier[]]): Promise<PlanContext> {
  const [first] = heads
  const { casting, settings, visit } = first
  const present = heads.map(headNow)
  const record = await learnedRecord(reader, {
    castingId: visit.head.castingId,
    form: visit.head.chamberForm,
    facts: casting,
    depthThou: depthAsked(casting, present, visit.targetCc),
    settings,
  })
  return contextOf(first, present, shownRate(record))
}

/** How deep the plan will about go, by the record alone: so that cuts like it teach its rate. Null: nothing to go by. */
function depthAsked(facts: CastingFacts, present: readonly Present[], targetCc: number | null): number | null {
  const chambersCc = present.flatMap(({ head }) => head.chambersCc)
  if (targetCc === null || chambersCc.length === 0) return null
  const meanCc = mean(chambersCc)
  const depthThou = (meanCc - targetCc) / must(rateOfRecord(facts)).ccPerThou
  return depthThou > 0 ? depthThou : null
}

function contextOf(
  { visit: first, casting, engine, settings, facts, wanted }: Dossier,
  present: readonly Present[],
  rate: ShownRate,
): PlanContext {
  const { job } = first
  const thickness = wanted.finishedThicknessIn
  const deepEdge = first.head.casting?.deepEdge === 'intake' ? 'intake' : 'exhaust'
  return {
    pairId: first.pairId,
    jobNumber: job.number,
    casting,
    castingName: first.head.casting?.name ?? 'casting not on record',
    deepEdge,
    chamberShape: chamberShapeOf(first.head.casting?.chamberShape),
    engine,
    heads: present.map(({ head }) => head),
    presentNominal: present.some(({ nominal }) => nominal),
    targetCc: first.targetCc,
    targetText: first.targetText,
    toleranceCc: settings.ccToleranceCc,
    marginCc: settings.vendorMarginCc,
    thouPerCc: rate.thouPerCc,
    rateProven: rate.proven,
    rateWords: rate.words,
    rate,
    limits: {
      angleCautionDeg: settings.angleCautionDeg,
      angleLimitDeg: casting.largestAngleDeg ?? settings.angleLimitDeg,
      thicknessLeastIn: casting.thicknessLeastIn ?? null,
      thicknessNewIn: newThicknessIn(first, casting),
      land: landOf(casting),
      classFlatOnly: job.classFlatOnly,
      classMinCc: job.classMinCc,
      classMaxCutIn: job.classMaxCutIn,
    },
    ptvLeastIn: { intake: settings.ptvLeastIntakeIn, exhaust: settings.ptvLeastExhaustIn },
    sealingMarginIn: settings.sealingMarginIn,
    flatDeck: facts.flatDeck ? { wantedThicknessIn: thickness?.value ?? null } : null,
    wantedThicknessText: thickness ? typedFigure(thickness) : '',
  }
}
