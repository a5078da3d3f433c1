import type { CastingFacts } from '@/lib/core/casting/figures'
import type { CutLimits, HeadNow } from '@/lib/core/cut/plan'
import type { EngineFacts } from '@/lib/core/engine/figures'
import { RefusedError } from '@/lib/core/errors'
import { rateOfRecord } from '@/lib/core/rate/rate-of-record'
import { thouPerCc, type Rate } from '@/lib/core/rate/rate'
import type { ShopSettings } from '@/lib/core/shop/settings'
import type { Reader } from '@/lib/data/db'
import { effectiveReadings, visitInclude, type VisitRecord } from '@/lib/data/facts'
import { castingFactsOf, engineFactsOf } from '@/lib/data/known-figures'
import { currentSettings } from '@/lib/data/settings'
import { tagOf } from '../stations/see-step'
import { ccBeforeCut } from './present-cc'

/** Everything a plan is computed from, for the live form and the server alike. */
export type PlanContext = {
  readonly pairId: string
  readonly jobNumber: string
  readonly casting: CastingFacts
  readonly castingName: string
  readonly deepEdge: 'intake' | 'exhaust'
  readonly engine: EngineFacts
  readonly heads: readonly HeadNow[]
  readonly presentNominal: boolean
  readonly targetCc: number | null
  readonly targetText: string
  readonly toleranceCc: number
  readonly marginCc: number
  readonly thouPerCc: number
  readonly rateWords: string
  readonly limits: CutLimits
  readonly ptvLeastIn: { readonly intake: number; readonly exhaust: number }
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
  return contextOf(visits, (await currentSettings(reader)).values)
}

function contextOf(visits: readonly VisitRecord[], settings: ShopSettings): PlanContext {
  const first = visits[0] as VisitRecord
  const casting = castingFactsOf(first.head.casting, first.head.chamberForm)
  const { job } = first
  const present = visits.map((visit) => headNow(visit, casting, settings))
  const rate = rateOf(casting)
  return {
    pairId: first.pairId,
    jobNumber: job.number,
    casting,
    castingName: first.head.casting?.name ?? 'casting not on record',
    deepEdge: first.head.casting?.deepEdge === 'intake' ? 'intake' : 'exhaust',
    engine: engineFactsOf(job.engine),
    heads: present.map(({ head }) => head),
    presentNominal: present.some(({ nominal }) => nominal),
    targetCc: first.targetCc,
    targetText: first.targetText,
    toleranceCc: settings.ccToleranceCc,
    marginCc: settings.vendorMarginCc,
    thouPerCc: thouPerCc(rate).thouPerCc,
    rateWords: rateWords(rate),
    limits: {
      angleCautionDeg: settings.angleCautionDeg,
      angleLimitDeg: casting.largestAngleDeg ?? settings.angleLimitDeg,
      thicknessLeastIn: casting.thicknessLeastIn ?? null,
      classFlatOnly: job.classFlatOnly,
      classMinCc: job.classMinCc,
      classMaxCutIn: job.classMaxCutIn,
    },
    ptvLeastIn: { intake: settings.ptvLeastIntakeIn, exhaust: settings.ptvLeastExhaustIn },
  }
}

/** The record's rate; a casting that is not on record goes by the trade's usual one, and says so. */
export function rateOf(casting: CastingFacts): Rate {
  const rate = rateOfRecord(casting)
  if (rate.ok) return rate.value
  throw new RefusedError(rate.refusal)
}

const priorWords = {
  outline: 'from the traced opening',
  perimeter: 'from the perimeter: a first guess',
  none: 'the trade’s usual figure or the shop’s own, no cut behind it yet: cut in two passes',
} as const

const rateWords = (rate: Rate): string =>
  rate.cuts > 0 ? `learned from ${rate.cuts} cuts` : priorWords[rate.prior]

function headNow(
  visit: VisitRecord,
  casting: CastingFacts,
  settings: ShopSettings,
): { head: HeadNow; nominal: boolean } {
  const measured = [...ccBeforeCut(visit, settings).chambers.values()].map((chamber) => chamber.meanCc)
  const nominalCc = visit.presentCc ?? casting.nominalCc
  const thickness = effectiveReadings(visit.readings).flatMap((reading) =>
    reading.kind === 'thickness' && reading.step.stepId === 'thickness' && reading.value !== null
      ? [reading.value]
      : [],
  )
  return {
    head: {
      tag: tagOf(visit),
      chambersCc: measured.length > 0 ? measured : nominalCc === undefined ? [] : [nominalCc],
      thicknessIn: thickness.length === 0 ? null : Math.min(...thickness),
    },
    nominal: measured.length === 0,
  }
}
