import { centroidShareOf } from '@/lib/core/cut/split'
import type { PlanRecord } from '@/lib/core/cut/plan-record'
import { stateAtMill, stopChamber, type StateAtMill } from '@/lib/core/at-mill/state-at-mill'
import { advisePass, type Pass } from '@/lib/core/rate/next-pass'
import { rateForHead, thouPerCc, type Rate } from '@/lib/core/rate/rate'
import type { Reader } from '@/lib/data/db'
import { cutsWords, learnedRate, partWords } from './casting-rate'
import { cutFactsOf } from './cut-facts'
import type { Dossier } from './dossier'

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
  const state = stateAtMill({
    cuts: cutFactsOf(mill),
    plan: record,
    centroidShare: centroidShareOf(mill.casting),
    rate: await rateOfHead(reader, mill, record),
    depthErrorThou: settings.depthSettingErrorThou,
  })
  if (!state || record.targetCc === null) {
    return { ...nothingKnown, why: 'The chambers of this head have not been measured. Measure them first.' }
  }
  const targetCc = record.targetCc - record.seatWorkGivesCc
  const advice = advisePass({
    presentCc: state.meanCc,
    uPresentCc: state.uCc,
    targetCc,
    toleranceCc: settings.ccToleranceCc,
    rate: state.rate,
    depthErrorThou: settings.depthSettingErrorThou,
    smallest: smallest(mill, state),
  })
  const shown = {
    ...nothingKnown,
    figures: [
      { label: 'Now', value: cc(state.meanCc), note: fromWords[state.from] },
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
  const known = `uncertainty ± ${partWords(rate.uCcPerThou / rate.ccPerThou)} on this head`
  const behind =
    rate.cuts === 0 ? 'no cut of the shop’s own behind it' : `${cutsWords(rate.cuts)} of the shop’s own behind it`
  return `${thouPerCc(rate).thouPerCc.toFixed(2)} thou per cc, ${behind}, ${known}`
}

const fromWords: Readonly<Record<StateAtMill['from'], string>> = {
  measured: 'measured',
  depth: 'calculated from the depth',
  'read-since-cut': 'measured since the cut',
}

function smallest({ visit }: Dossier, { smallestCc, uSmallestCc }: StateAtMill) {
  const { classMinCc } = visit.job
  return classMinCc === null ? null : { cc: smallestCc, uCc: uSmallestCc, classMinimumCc: classMinCc }
}

/** What the shop's other cuts of this casting say of this head. */
async function rateOfHead(reader: Reader, { visit, casting, settings }: Dossier, record: PlanRecord): Promise<Rate> {
  const { castingId, chamberForm: form } = visit.head
  const rate = await learnedRate(reader, {
    castingId,
    form,
    facts: casting,
    depthThou: record.depthAtCentroidIn > 0 ? record.depthAtCentroidIn * 1000 : null,
    depthErrorThou: settings.depthSettingErrorThou,
    exceptVisitId: visit.id,
  })
  return rateForHead(rate, settings.betweenHeadPart)
}
