import type { PlanRecord } from '@/lib/core/cut/plan-record'
import { learnRate, type RateCut } from '@/lib/core/rate/learn'
import { advisePass, type Pass } from '@/lib/core/rate/next-pass'
import { rateForHead, thouPerCc, type Rate } from '@/lib/core/rate/rate'
import { shopCutOf } from '@/lib/core/rate/shop-cut'
import { depthAtCentroidIn } from '@/lib/core/rate/shop-cuts'
import { confirmedCut } from '@/lib/core/route/outside-cuts'
import type { ShopSettings } from '@/lib/core/shop/settings'
import type { Reader } from '@/lib/data/db'
import { cutFactsOf } from './cut-facts'
import type { Dossier } from './dossier'
import { cutsWords, learnedRate, partWords } from './casting-rate'
import { ccAt, ccBeforeCut, type PresentCc } from './present-cc'
import { centroidShareOf } from '@/lib/core/cut/split'

/** What the mill's card says: few words, figures first. */
export type NextPass = {
  /** Stop at this much from touch-off; null when nothing may be cut. */
  readonly stopAtThou: number | null
  /** Of it, still to come; null when all of it is. */
  readonly thisPassThou: number | null
  /** Why no deeper, or why not at all. */
  readonly why: string
  /** Nothing to take is not the same as: stop. */
  readonly verdict: 'cut' | 'nothing' | 'stop'
  readonly figures: readonly { readonly label: string; readonly value: string; readonly note: string }[]
  /** What to do next; '' when nothing follows. */
  readonly then: string
  readonly rate: string
}

/** How deep to stop now, from what the chambers held, what was cut since and what that showed. */
export async function nextPassAtMill(reader: Reader, mill: Dossier, record: PlanRecord): Promise<NextPass> {
  const { settings } = mill
  const before = ccBeforeCut(mill)
  if (!before.head || record.targetCc === null) {
    return { ...nothingKnown, why: 'The chambers of this head have not been measured. Measure them first.' }
  }
  const { castingId, chamberForm: form } = mill.visit.head
  const rate = await learnedRate(reader, {
    castingId,
    form,
    facts: mill.casting,
    depthThou: record.depthAtCentroidIn > 0 ? record.depthAtCentroidIn * 1000 : null,
    depthErrorThou: settings.depthSettingErrorThou,
    exceptVisitId: mill.visit.id,
  })
  const state = stateAtMill(mill, record, before, rateForHead(rate, settings.betweenHeadPart))
  const targetCc = record.targetCc - record.seatWorkGivesCc
  const advice = advisePass({
    presentCc: state.meanCc,
    uPresentCc: state.uCc,
    targetCc,
    toleranceCc: settings.ccToleranceCc,
    rate: state.rate,
    depthErrorThou: settings.depthSettingErrorThou,
    smallest: smallest(mill, before, state.takenCc),
  })
  const shown = {
    ...nothingKnown,
    figures: [
      { label: 'Now', value: cc(state.meanCc), note: state.how },
      { label: 'Target', value: cc(targetCc), note: seatNote(record) },
    ],
    rate: rateLine(state.rate),
  }
  if (!advice.ok) return { ...shown, why: advice.refusal.message }
  if (advice.value.kind === 'none') return { ...shown, verdict: 'nothing', why: advice.value.why }
  const pass = advice.value
  return {
    ...shown,
    verdict: 'cut',
    stopAtThou: state.depthThou + pass.depthThou,
    thisPassThou: state.depthThou > 0 ? pass.depthThou : null,
    why: whyNoDeeper(pass, targetCc - settings.ccToleranceCc),
    figures: [...shown.figures, { label: 'Should leave', value: cc(pass.leavesCc), note: '' }],
    then: `Then cc chamber ${stopChamber}.`,
  }
}

const nothingKnown: NextPass = {
  stopAtThou: null,
  thisPassThou: null,
  why: '',
  verdict: 'stop',
  figures: [],
  then: '',
  rate: '',
}

const cc = (value: number): string => `${value.toFixed(1)} cc`

const seatNote = ({ targetCc, seatWorkGivesCc }: PlanRecord): string =>
  seatWorkGivesCc > 0 && targetCc !== null ? `${cc(targetCc)} less ${cc(seatWorkGivesCc)} of seat work to come` : ''

function whyNoDeeper({ bound, nominalThou }: Pass, leastCc: number): string {
  switch (bound) {
    case 'nominal':
      return 'The whole way to the target.'
    case 'tolerance':
      return `Not all ${nominalThou} at once: it could end under ${cc(leastCc)}.`
    case 'class-minimum':
      return 'The smallest chamber must stay over the class minimum.'
    case 'unproven':
      return `Half of ${nominalThou}: too few cuts are behind the rate.`
  }
}

function rateLine(rate: Rate): string {
  const known = `known to ± ${partWords(rate.uCcPerThou / rate.ccPerThou)} on this head`
  const behind =
    rate.cuts === 0 ? 'no cut of the shop’s own behind it' : `${cutsWords(rate.cuts)} of the shop’s own behind it`
  return `${thouPerCc(rate).thouPerCc.toFixed(2)} thou per cc, ${behind}, ${known}`
}

function smallest({ visit }: Dossier, before: PresentCc, takenCc: number) {
  const { classMinCc } = visit.job
  if (classMinCc === null || !before.head) return null
  return { cc: before.head.smallestCc - takenCc, uCc: before.head.uSmallestCc, classMinimumCc: classMinCc }
}

type AtMill = {
  readonly meanCc: number
  readonly uCc: number
  readonly takenCc: number
  /** Flat depth cut here so far, from touch-off. */
  readonly depthThou: number
  readonly rate: Rate
  readonly how: string
}

/**
 * What the head holds at the mill: what it held before, less what the cuts took by the rate; where a chamber was read
 * since, that reading and the prediction are weighed by how well each is known, and the cut teaches the rate.
 */
function stateAtMill(mill: Dossier, record: PlanRecord, before: PresentCc, rate: Rate): AtMill {
  const { readings, settings } = mill
  const start = before.head ?? { meanCc: 0, uCc: 0 }
  const depth = readings.findLast(
    (reading) => reading.kind === 'cut-depth' && reading.step.stepId === 'flat-cut' && reading.value !== null,
  )
  const depthThou = (depth?.value ?? 0) * 1000
  const wholeThou = cutSoFarThou(mill, record, depthThou)
  const predicted = lessCut({ cc: start.meanCc, u: start.uCc }, wholeThou, rate, settings)
  const here = readings.filter((reading) => reading.kind === 'cc')
  const atStop = here.filter(
    (reading) => reading.step.stepId === 'flat-cut' && depth !== undefined && reading.seq >= depth.seq,
  )
  const arrived = depth ? [] : here.filter((reading) => reading.step.stepId === 'arrival-figures')
  const read = readAfter(before, ccAt([...atStop, ...arrived], settings))
  const now = read === null ? predicted : weighed(predicted, read)
  return {
    meanCc: now.cc,
    uCc: now.u,
    takenCc: start.meanCc - now.cc,
    depthThou,
    rate: read === null || wholeThou === 0 ? rate : taught(rate, wholeThou, start, read, settings),
    how: wholeThou === 0 ? 'measured' : read === null ? 'reckoned from the depth' : 'measured since the cut',
  }
}

/**
 * Depth at the chamber's centroid of all that is cut so far: as measured; where a vendor's cut was not measured, what the
 * plan and the order say of it.
 */
function cutSoFarThou(mill: Dossier, record: PlanRecord, depthThou: number): number {
  const edges = shopCutOf(cutFactsOf(mill))?.edges
  const measuredIn = edges && depthAtCentroidIn(edges, centroidShareOf(mill.casting))
  if (measuredIn !== null && measuredIn !== undefined) return measuredIn * 1000
  const outsideIn = mill.facts.orders.reduce((sum, order) => sum + (confirmedCut(order) ? order.flatIn : 0), 0)
  return (record.depthAtCentroidIn - record.flatIn + outsideIn) * 1000 + depthThou
}

type Known = { readonly cc: number; readonly u: number }

const lessCut = (from: Known, depthThou: number, rate: Rate, settings: ShopSettings): Known => ({
  cc: from.cc - depthThou * rate.ccPerThou,
  u: Math.hypot(
    from.u,
    depthThou * rate.uCcPerThou,
    depthThou > 0 ? settings.depthSettingErrorThou * rate.ccPerThou : 0,
  ),
})

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
    uBeforeCc: 0, // the reading since carries it already
    afterCc: read.cc,
    uAfterCc: read.u,
    likeForLike: true,
  }
  const learned = learnRate(rate, [cut], settings.depthSettingErrorThou)
  return learned.ok ? learned.value : rate
}

/** The chamber that is read at the stop, and on arrival. */
const stopChamber = '1'

/** The mean of the chambers by what chamber 1 lost: every chamber loses alike. Null: not read since. */
function readAfter(before: PresentCc, now: PresentCc): Known | null {
  const was = before.chambers.get(stopChamber)
  const after = now.chambers.get('at-size') ?? now.chambers.get('at-stop') ?? now.chambers.get(stopChamber)
  if (!was || !after || !before.head) return null
  return { cc: before.head.meanCc - (was.meanCc - after.meanCc), u: Math.hypot(was.uCc, after.uCc) }
}
