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
  const last = isNominal ? '' : ' Begin with chamber 1.'
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
 * What the head holds at the mill: what it held before, less what the cuts took by the rate; where a chamber was read at
 * the stop, that reading and the prediction are weighed by how well each is known, and the cut teaches the rate.
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
  const here = effectiveReadings(visit.readings).filter((reading) => reading.step.stepId === 'flat-cut')
  const depth = here.findLast((reading) => reading.kind === 'cut-depth')
  const depthThou = (depth?.value ?? 0) * 1000
  const wholeThou = anglePartThou + depthThou
  const predicted: Known = {
    cc: start.meanCc - wholeThou * rate.ccPerThou,
    u: Math.hypot(
      start.uCc,
      wholeThou * rate.uCcPerThou,
      wholeThou > 0 ? settings.depthSettingErrorThou * rate.ccPerThou : 0,
    ),
  }
  const since = here.filter(
    (reading) => reading.kind === 'cc' && depth !== undefined && reading.seq >= depth.seq,
  )
  const read = readAtStop(before, ccAt(since, settings))
  const now = read === null ? predicted : weighed(predicted, read)
  return {
    meanCc: now.cc,
    uCc: now.u,
    takenCc: start.meanCc - now.cc,
    depthThou,
    rate: read === null || wholeThou === 0 ? rate : taught(rate, wholeThou, start, read, settings),
  }
}

type Known = { readonly cc: number; readonly u: number }

/** The inverse-variance mean of two estimates of one volume. */
function weighed(a: Known, b: Known): Known {
  const [wa, wb] = [1 / a.u ** 2, 1 / b.u ** 2]
  return { cc: (a.cc * wa + b.cc * wb) / (wa + wb), u: Math.sqrt(1 / (wa + wb)) }
}

function taught(
  rate: Rate,
  depthThou: number,
  start: { readonly meanCc: number; readonly uCc: number },
  read: Known,
  settings: ShopSettings,
): Rate {
  const cut: RateCut = {
    depthThou,
    beforeCc: start.meanCc,
    uBeforeCc: 0, // the reading at the stop carries it already
    afterCc: read.cc,
    uAfterCc: read.u,
    likeForLike: true,
  }
  const learned = learnRate(rate, [cut], settings.depthSettingErrorThou)
  return learned.ok ? learned.value : rate
}

/** The chamber that is read at the stop. */
const stopChamber = '1'

/** The mean of the chambers by what chamber 1 lost: every chamber loses alike. Null: not read at the stop. */
function readAtStop(before: PresentCc, now: PresentCc): Known | null {
  const was = before.chambers.get(stopChamber)
  const after = now.chambers.get('at-size') ?? now.chambers.get('at-stop')
  if (!was || !after || !before.head) return null
  return { cc: before.head.meanCc - (was.meanCc - after.meanCc), u: Math.hypot(was.uCc, after.uCc) }
}
