import { planTitle } from '@/lib/core/options/plan-words'
import { learnRate, type RateCut } from '@/lib/core/rate/learn'
import { advisePass } from '@/lib/core/rate/next-pass'
import { rateForHead, type Rate } from '@/lib/core/rate/rate'
import type { RouteStep } from '@/lib/core/route/types'
import type { ShopSettings } from '@/lib/core/shop/settings'
import { formatFigure, thou } from '@/lib/core/units/format-figure'
import type { PlanRecord } from '@/lib/core/cut/plan-record'
import type { Reader } from '@/lib/data/db'
import { effectiveReadings, planRecordOf, removedBeforeIn, type VisitRecord } from '@/lib/data/facts'
import { castingFactsOf } from '@/lib/data/known-figures'
import type { VisitWithRoute } from '@/lib/data/visits'
import { rateOf } from '../plans/plan-context'
import { ccAt, ccBeforeCut, type PresentCc } from '../plans/present-cc'

type Line = { readonly label: string; readonly value: string; readonly unit: string; readonly note: string }

/** The plan's figures for one step. At the deck mill one is huge: how deep to stop from touch-off. */
export type PlanAtStep = {
  readonly huge: Line | null
  /** Why nothing may be cut now; null when nothing stands against it. */
  readonly stop: string | null
  readonly lines: readonly Line[]
  readonly cautions: readonly string[]
}

const none: PlanAtStep = { huge: null, stop: null, lines: [], cautions: [] }
const line = (label: string, value: string, note = ''): Line => ({ label, value, unit: '', note })

export async function planAtStep(
  reader: Reader,
  { visit }: VisitWithRoute,
  step: RouteStep,
  settings: ShopSettings,
): Promise<PlanAtStep> {
  const plan = visit.pair.plans[0]
  if (!plan) return none
  const record = planRecordOf(plan)
  const base: PlanAtStep = { ...none, lines: [line('Plan', planTitle(record))], cautions: record.cautions }
  if (step.stepId === 'flat-cut') return flatCut(visit, record, settings, await mateDepth(reader, visit))
  if (step.stepId === 'angle-cut') return angleCut(base, record)
  if (step.stepId === 'finished') return finished(base, record)
  return ['chambers', 'intake', 'ptv', 'bolt-seats', 'bolt-fit', 'seat-after', 'arrival-figures'].includes(
    step.stepId,
  )
    ? base
    : none
}

function angleCut(base: PlanAtStep, record: PlanRecord): PlanAtStep {
  const huge = {
    label: `Depth at the ${record.deepEdge} edge, nothing at the other`,
    value: (record.angleIn * 1000).toFixed(1),
    unit: 'thou',
    note: record.angleDeg === null ? '' : `${record.angleDeg.toFixed(2)}°`,
  }
  return { ...base, huge }
}

const finished = (base: PlanAtStep, record: PlanRecord): PlanAtStep => ({
  ...base,
  lines: [
    ...base.lines,
    ...(record.targetCc === null ? [] : [line('Target', formatFigure(record.targetCc, 'chamberVolume'))]),
    ...(record.predictedFinishedCc === null
      ? []
      : [line('Predicted', formatFigure(record.predictedFinishedCc, 'chamberVolume'))]),
  ],
})

/** Deepest total from touch-off among the other heads of the pair. */
async function mateDepth(reader: Reader, visit: VisitRecord): Promise<string> {
  const rows = await reader.reading.findMany({
    where: {
      kind: 'cut-depth',
      set: { stepId: 'flat-cut', visit: { pairId: visit.pairId, id: { not: visit.id } } },
    },
    select: { value: true },
    orderBy: { id: 'desc' },
    take: 1,
  })
  const depth = rows[0]?.value
  return depth === null || depth === undefined ? 'not cut yet' : thou(depth)
}

function flatCut(visit: VisitRecord, record: PlanRecord, settings: ShopSettings, mate: string): PlanAtStep {
  const removed = removedBeforeIn(visit, effectiveReadings(visit.readings))
  const own = visit.pair.visits.length > 1 ? [line('The mate', mate)] : []
  const lines = [
    line('Plan', planTitle(record)),
    ...own,
    line(
      'Gone since new, before this',
      removed === null ? 'new thickness unknown' : formatFigure(removed, 'cutDepth'),
    ),
  ]
  if (record.kind === 'clean-up') {
    const huge = {
      label: 'Stop at, at the latest',
      value: (record.flatIn * 1000).toFixed(1),
      unit: 'thou',
      note: 'As little as makes it flat.',
    }
    return { huge, stop: null, lines, cautions: record.cautions }
  }
  return {
    ...nextPass(visit, record, settings),
    lines: [...lines, ...seatLine(record)],
    cautions: record.cautions,
  }
}

const seatLine = (record: PlanRecord): Line[] =>
  record.seatWorkGivesCc > 0
    ? [line('Seat work to come gives back', formatFigure(record.seatWorkGivesCc, 'chamberVolume'))]
    : []

/** How deep to stop now, from what the chambers held, what was cut since and what that showed. */
function nextPass(
  visit: VisitRecord,
  record: PlanRecord,
  settings: ShopSettings,
): Pick<PlanAtStep, 'huge' | 'stop'> {
  const before = ccBeforeCut(visit, settings)
  if (!before.head || record.targetCc === null) {
    return {
      huge: null,
      stop: 'The chambers of this head have not been measured: without cc no depth can be advised.',
    }
  }
  const rate = rateForHead(
    rateOf(castingFactsOf(visit.head.casting, visit.head.chamberForm)),
    settings.betweenHeadPart,
  )
  const state = stateAtMill(visit, record, before, rate, settings)
  const advice = advisePass({
    presentCc: state.meanCc,
    uPresentCc: state.uCc,
    targetCc: record.targetCc - record.seatWorkGivesCc,
    toleranceCc: settings.ccToleranceCc,
    rate: state.rate,
    depthErrorThou: settings.depthSettingErrorThou,
    smallest: smallest(visit, before, state.takenCc),
  })
  if (!advice.ok) return { huge: null, stop: advice.refusal.message }
  if (advice.value.kind === 'none') return { huge: null, stop: advice.value.why }
  const { depthThou, isNominal, why } = advice.value
  const total = state.depthThou + depthThou
  const last = isNominal ? '' : ' Then cc chamber 1.'
  const note = `${why}${last}${state.depthThou > 0 ? ` ${state.depthThou.toFixed(1)} thou are cut already: this pass takes ${depthThou.toFixed(1)}.` : ''}`
  return {
    huge: { label: 'Stop at, from touch-off', value: total.toFixed(1), unit: 'thou', note },
    stop: null,
  }
}

function smallest(visit: VisitRecord, before: PresentCc, takenCc: number) {
  const { classMinCc } = visit.job
  if (classMinCc === null || !before.head) return null
  return { cc: before.head.smallestCc - takenCc, uCc: before.head.uSmallestCc, classMinimumCc: classMinCc }
}

type AtMill = {
  readonly meanCc: number
  readonly uCc: number
  readonly takenCc: number
  /** Flat depth cut so far, from touch-off. */
  readonly depthThou: number
  readonly rate: Rate
}

/**
 * What the head holds at the mill: what it held before, less what the angle part took by the rate, less what the chambers
 * measured at the stop show to be gone.
 */
function stateAtMill(
  visit: VisitRecord,
  record: PlanRecord,
  before: PresentCc,
  rate: Rate,
  settings: ShopSettings,
): AtMill {
  const start = before.head ?? { meanCc: 0, uCc: 0 }
  const anglePartThou = (record.depthAtCentroidIn - record.flatIn) * 1000
  const angleCc = anglePartThou * rate.ccPerThou
  const meanCc = start.meanCc - angleCc
  const uncut = {
    meanCc,
    uCc: Math.hypot(start.uCc, anglePartThou * rate.uCcPerThou),
    takenCc: angleCc,
    depthThou: 0,
    rate,
  }
  const here = effectiveReadings(visit.readings).filter((reading) => reading.step.stepId === 'flat-cut')
  const depthIn = here.findLast((reading) => reading.kind === 'cut-depth')?.value
  if (depthIn === null || depthIn === undefined || depthIn === 0) return uncut
  const depthThou = depthIn * 1000
  const shown = shift(before, ccAt(newestStop(here), settings))
  if (shown === null) {
    const takenCc = angleCc + depthThou * rate.ccPerThou
    return {
      meanCc: start.meanCc - takenCc,
      uCc: Math.hypot(start.uCc, (anglePartThou + depthThou) * rate.uCcPerThou),
      takenCc,
      depthThou,
      rate,
    }
  }
  const cut: RateCut = {
    depthThou: depthThou + anglePartThou,
    beforeCc: start.meanCc,
    uBeforeCc: start.uCc,
    afterCc: start.meanCc - shown.takenCc,
    uAfterCc: shown.uCc,
    likeForLike: true,
  }
  const learned = learnRate(rate, [cut], settings.depthSettingErrorThou)
  return {
    meanCc: start.meanCc - shown.takenCc,
    uCc: shown.uCc,
    takenCc: shown.takenCc,
    depthThou,
    rate: learned.ok ? learned.value : rate,
  }
}

/** Readings of the last go at the mill: each stop is read anew. */
function newestStop(readings: ReturnType<typeof effectiveReadings>) {
  const last = readings.findLast((reading) => reading.kind === 'cc')
  return readings.filter((reading) => reading.kind === 'cc' && reading.setId === last?.setId)
}

/** How much the chambers measured at the stop have lost in the mean; every chamber loses alike. */
function shift(before: PresentCc, now: PresentCc): { takenCc: number; uCc: number } | null {
  const pairs = [...now.chambers].flatMap(([point, after]) => {
    const was = before.chambers.get(point)
    return was ? [{ lostCc: was.meanCc - after.meanCc, uCc: after.uCc }] : []
  })
  if (pairs.length === 0) return null
  return {
    takenCc: pairs.reduce((sum, pair) => sum + pair.lostCc, 0) / pairs.length,
    uCc: Math.sqrt(pairs.reduce((sum, pair) => sum + pair.uCc ** 2, 0)) / pairs.length,
  }
}
