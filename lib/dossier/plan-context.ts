import type { CastingFacts } from '@/lib/core/casting/figures'
import type { CutLimits, HeadNow } from '@/lib/core/cut/plan'
import type { EngineFacts } from '@/lib/core/engine/figures'
import { must, RefusedError } from '@/lib/core/errors'
import { landOf } from '@/lib/core/options/inputs-of'
import { rateOfRecord } from '@/lib/core/rate/rate-of-record'
import type { ShopSettings } from '@/lib/core/shop/settings'
import type { Reader } from '@/lib/data/db'
import { effectiveReadings, removedBeforeIn, visitInclude, type VisitRecord } from '@/lib/data/facts'
import { castingFactsOf, engineFactsOf } from '@/lib/data/known-figures'
import { currentSettings } from '@/lib/data/settings'
import { headLabel } from '@/lib/core/shop/tag-number'
import { learnedRate, shownRate, type ShownRate } from './casting-rate'
import { ccBeforeCut } from './present-cc'
import { mean } from '@/lib/core/mean'

/** Everything a plan is computed from, for the live form and the server alike. */
export type PlanContext = {
  readonly pairId: string
  readonly jobNumber: string
  readonly casting: CastingFacts
  readonly castingName: string
  readonly deepEdge: 'intake' | 'exhaust'
  readonly chamberShape: 'open' | 'closed'
  readonly engine: EngineFacts
  readonly heads: readonly HeadNow[]
  readonly presentNominal: boolean
  readonly targetCc: number | null
  readonly targetText: string
  readonly toleranceCc: number
  readonly marginCc: number
  readonly thouPerCc: number
  readonly rateWords: string
  readonly rate: ShownRate
  readonly limits: CutLimits
  readonly ptvLeastIn: { readonly intake: number; readonly exhaust: number }
  readonly sealingMarginIn: number
}

export async function visitsOfPair(reader: Reader, pairId: string): Promise<VisitRecord[]> {
  const visits = await reader.visit.findMany({
    where: { pairId, scrappedAt: null, returned: null },
    include: visitInclude,
    orderBy: { position: 'asc' },
  })
  if (visits.length > 0) return visits
  throw new RefusedError({ code: 'not-found', message: 'There are no heads here to plan a cut for.' })
}

export async function planContext(reader: Reader, pairId: string): Promise<PlanContext> {
  const visits = await visitsOfPair(reader, pairId)
  const settings = (await currentSettings(reader)).values
  const first = visits[0] as VisitRecord
  const { castingId, chamberForm: form } = first.head
  const facts = castingFactsOf(first.head.casting, form)
  const present = visits.map((visit) => headNow(visit, facts, settings))
  const rate = await learnedRate(reader, {
    castingId,
    form,
    facts,
    depthThou: depthAsked(facts, present, first.targetCc),
    depthErrorThou: settings.depthSettingErrorThou,
  })
  return contextOf(first, facts, present, shownRate(rate), settings)
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
  first: VisitRecord,
  casting: CastingFacts,
  present: readonly Present[],
  rate: ShownRate,
  settings: ShopSettings,
): PlanContext {
  const { job } = first
  const deepEdge = first.head.casting?.deepEdge === 'intake' ? 'intake' : 'exhaust'
  return {
    pairId: first.pairId,
    jobNumber: job.number,
    casting,
    castingName: first.head.casting?.name ?? 'casting not on record',
    deepEdge,
    chamberShape: first.head.casting?.chamberShape === 'closed' ? 'closed' : 'open',
    engine: engineFactsOf(job.engine),
    heads: present.map(({ head }) => head),
    presentNominal: present.some(({ nominal }) => nominal),
    targetCc: first.targetCc,
    targetText: first.targetText,
    toleranceCc: settings.ccToleranceCc,
    marginCc: settings.vendorMarginCc,
    thouPerCc: rate.thouPerCc,
    rateWords: rate.words,
    rate,
    limits: {
      angleCautionDeg: settings.angleCautionDeg,
      angleLimitDeg: casting.largestAngleDeg ?? settings.angleLimitDeg,
      thicknessLeastIn: casting.thicknessLeastIn ?? null,
      land: landOf(casting, deepEdge),
      classFlatOnly: job.classFlatOnly,
      classMinCc: job.classMinCc,
      classMaxCutIn: job.classMaxCutIn,
    },
    ptvLeastIn: { intake: settings.ptvLeastIntakeIn, exhaust: settings.ptvLeastExhaustIn },
    sealingMarginIn: settings.sealingMarginIn,
  }
}

type Present = { readonly head: HeadNow; readonly nominal: boolean }

function headNow(visit: VisitRecord, casting: CastingFacts, settings: ShopSettings): Present {
  const measured = [...ccBeforeCut(visit, settings).chambers.values()].map((chamber) => chamber.meanCc)
  const nominalCc = visit.presentCc ?? casting.nominalCc
  const thickness = effectiveReadings(visit.readings).flatMap((reading) =>
    reading.kind === 'thickness' && reading.step.stepId === 'thickness' && reading.value !== null
      ? [reading.value]
      : [],
  )
  return {
    head: {
      tag: headLabel(visit),
      chambersCc: measured.length > 0 ? measured : nominalCc === undefined ? [] : [nominalCc],
      thicknessIn: thickness.length === 0 ? null : Math.min(...thickness),
      removedBeforeIn: removedBeforeIn(visit, effectiveReadings(visit.readings)),
    },
    nominal: measured.length === 0,
  }
}
