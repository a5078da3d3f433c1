import { adviseAtMill, type MillAdvice, type MillInput, type MillQuestion } from '@/lib/core/at-mill/advice'
import type { Further } from '@/lib/core/at-mill/further-readings'
import { ownRate } from '@/lib/core/at-mill/own-rate'
import { readsAtMill } from '@/lib/core/at-mill/reads-to-come'
import type { MillFacts, StateAtMill } from '@/lib/core/at-mill/state-at-mill'
import { touchOffDepth } from '@/lib/core/at-mill/touch-off'
import { millPoint } from '@/lib/core/chamber/mill-point'
import { shopRepeatability } from '@/lib/core/chamber/burette'
import { centroidShareOf } from '@/lib/core/cut/split'
import type { PlanRecord } from '@/lib/core/cut/plan-record'
import { rateForHead, thouPerCc, type Rate } from '@/lib/core/rate/rate'
import { screenLimit, zOfCut } from '@/lib/core/rate/screen'
import { shopCutOf, type CutFacts } from '@/lib/core/rate/shop-cut'
import { taughtBy } from '@/lib/core/rate/shop-cuts'
import type { Reader } from '@/lib/data/db'
import { shopCutsOfVisits } from '@/lib/data/rate-cuts'
import { millWords, type MillNumbers, type MillWords } from '@/lib/words/mill'
import { cutsWords, learnedRecord, partWords, scatterOf, type JudgedRecord } from './casting-rate'
import { cutFactsOf } from './cut-facts'
import type { Dossier } from './dossier'

/** What the mill's card says: few words, figures first. */
export type NextPass = MillWords & {
  /** Stop at this much from the touch-off; null when nothing may be cut now. */
  readonly stopAtThou: number | null
  /** Of it, still to come; null when all of it is. */
  readonly thisPassThou: number | null
  /** Nothing to take and something to read are not the same as: stop. */
  readonly verdict: 'cut' | 'read' | 'nothing' | 'stop'
  readonly figures: readonly { readonly label: string; readonly value: string; readonly note: string }[]
  readonly rate: string
  /** How far one reading scatters, and whether that is the default. */
  readonly spread: string
  /** From which touch-off the depth counts. */
  readonly countsFrom: string
  /** Where the chamber to read next is typed in; null: none is. */
  readonly readNext: string | null
  /** How often the chambers are to be read at the mill next, by their places there. */
  readonly reads: readonly { readonly point: string; readonly readings: number }[]
}

/** The next thing to do at the mill, from what the chambers held, what was cut since and what that showed. */
export async function nextPassAtMill(
  reader: Reader,
  mill: Dossier,
  record: PlanRecord,
  isDone = false,
): Promise<NextPass> {
  const { settings } = mill
  const cuts = cutFactsOf(mill)
  const learned = await recordForHead(reader, mill, record)
  const targetCc = record.targetCc === null ? null : record.targetCc - record.seatWorkGivesCc
  const numbers = { targetCc: targetCc ?? 0, toleranceCc: settings.ccToleranceCc }
  if (targetCc === null) return shownPass(notMeasured, [], { state: null, record, numbers, cuts }, isDone)
  const input: MillInput = {
    ...millFactsOf(mill, record, learned.rate),
    targetCc,
    toleranceCc: settings.ccToleranceCc,
    classMinimumCc: mill.visit.job.classMinCc,
    screenedCcPerThou: learned.screenedCcPerThou,
    halfFirstPass: learned.halfFirstPass,
    question: await ownQuestion(reader, mill, cuts, learned),
    unread: mill.facts.plan?.rateProven === true && record.flatIn <= settings.checkCcDeeperThanIn,
  }
  const found = adviseAtMill(input)
  return shownPass(found.advice, readsAtMill(input, found), { state: found.state, record, numbers, cuts }, isDone)
}

const notMeasured: MillAdvice = { code: 'not-measured' }

/** A head at the mill by a casting's rate: what it holds, what was cut, what that showed. */
const millFactsOf = (mill: Dossier, plan: MillFacts['plan'], rate: Rate): MillFacts => ({
  cuts: cutFactsOf(mill),
  plan,
  centroidShare: centroidShareOf(mill.casting),
  rate: rateForHead(rate, mill.settings.betweenHeadPart),
  depthErrorThou: mill.settings.depthSettingErrorThou,
})

/** The rate that this head's own cut has shown; null: it was not cut and read yet, or its cut is asked about. */
export async function ownRateOf(reader: Reader, mill: Dossier, learned: JudgedRecord): Promise<Rate | null> {
  const asked = await ownQuestion(reader, mill, cutFactsOf(mill), learned)
  return asked || !mill.plan ? null : ownRate(millFactsOf(mill, mill.plan, learned.rate))
}

function shownPass(advice: MillAdvice, further: readonly Further[], shown: Shown, isDone: boolean): NextPass {
  if (isDone) return doneCard(shown)
  const stop = advice.code === 'read-more' && isUncut(shown.cuts) ? 'before' : 'at-stop'
  const reads = further.map(({ chamber, readings }) => ({ point: millPoint(stop, chamber), readings }))
  return { ...cardOf(advice, millWords(advice, shown.numbers), shown), reads }
}

const isUncut = ({ readings }: CutFacts): boolean => touchOffDepth(readings).seq === null

/** The step is ticked: the card says what was cut, and nothing to do. */
function doneCard(shown: Shown): NextPass {
  const { totalIn } = touchOffDepth(shown.cuts.readings)
  const headline = totalIn > 0 ? `Cut: ${(totalIn * 1000).toFixed(1)} thou.` : 'Cut, depth not read.'
  return { ...cardOf({ code: 'whole-way', offThou: 0 }, { headline, why: 'The step is ticked.', then: '' }, shown) }
}

type Shown = {
  readonly state: StateAtMill | null
  readonly record: PlanRecord
  readonly numbers: MillNumbers
  readonly cuts: CutFacts
}

function cardOf(advice: MillAdvice, words: MillWords, { state, record, numbers, cuts }: Shown): NextPass {
  const isCut = advice.code === 'cut'
  const leaves = isCut ? [{ label: 'Should leave', value: cc(advice.leavesCc), note: '' }] : []
  return {
    ...words,
    stopAtThou: isCut ? advice.stopAtThou : null,
    thisPassThou: isCut && advice.offThou > 0 ? advice.moreThou : null,
    verdict: verdictOf(advice),
    figures: state
      ? [
          { label: 'Now', value: cc(state.mean.cc), note: fromWords[state.from] },
          { label: 'Target', value: cc(numbers.targetCc), note: seatNote(record) },
          ...cutSoFar(state),
          ...leaves,
        ]
      : [],
    rate: state ? rateLine(state.rate) : '',
    spread: state ? spreadLine(cuts) : '',
    countsFrom:
      touchOffDepth(cuts.readings).restarts > 0
        ? 'All depths count from the new touch-off.'
        : 'All depths count from the first touch-off.',
    readNext: pointToRead(advice, cuts),
    reads: [],
  }
}

const verdicts: Readonly<Record<MillAdvice['code'], NextPass['verdict']>> = {
  cut: 'cut',
  'read-now': 'read',
  'read-more': 'read',
  'too-coarse': 'read',
  question: 'stop',
  'whole-way': 'nothing',
  nothing: 'nothing',
  'not-measured': 'stop',
  hold: 'stop',
  'no-safe-pass': 'stop',
  refused: 'stop',
}
const verdictOf = ({ code }: MillAdvice): NextPass['verdict'] => verdicts[code]

function pointToRead(advice: MillAdvice, cuts: CutFacts): string | null {
  const chamber = chamberToRead(advice)
  if (chamber === null) return null
  const before = advice.code === 'read-more' && isUncut(cuts)
  return millPoint(before ? 'before' : 'at-stop', chamber)
}

function chamberToRead(advice: MillAdvice): string | null {
  if (advice.code === 'read-now') return advice.chamber
  if (advice.code === 'cut') return advice.thenRead
  return advice.code === 'read-more' ? (advice.further[0]?.chamber ?? null) : null
}

const cc = (value: number): string => `${value.toFixed(1)} cc`

const cutSoFar = ({ depthThou }: StateAtMill) =>
  depthThou > 0 ? [{ label: 'Cut so far', value: `${depthThou.toFixed(1)} thou`, note: '' }] : []

const seatNote = ({ targetCc, seatWorkGivesCc }: PlanRecord): string =>
  seatWorkGivesCc > 0 && targetCc !== null ? `${cc(targetCc)} less ${cc(seatWorkGivesCc)} of seat work to come` : ''

function rateLine(rate: Rate): string {
  const known = `uncertainty ± ${partWords(rate.uCcPerThou / rate.ccPerThou)} on this head`
  const behind =
    rate.cuts === 0 ? 'no cut of the shop’s own behind it' : `${cutsWords(rate.cuts)} of the shop’s own behind it`
  return `${thouPerCc(rate).thouPerCc.toFixed(2)} thou per cc, ${behind}, ${known}`
}

/** How far one reading scatters, and whether the shop has learned that. */
function spreadLine({ burette }: CutFacts): string {
  const { sCc, isDefault } = shopRepeatability(burette, [])
  return `One cc reading scatters by ± ${sCc.toFixed(2)} cc${isDefault ? ' (default)' : ', from the shop’s own repeats'}.`
}

const fromWords: Readonly<Record<StateAtMill['from'], string>> = {
  measured: 'measured',
  depth: 'calculated from the depth',
  'read-since-cut': 'measured since the cut',
}

/** What the shop's other cuts of this casting say of this head. */
const recordForHead = (reader: Reader, { visit, casting, settings }: Dossier, record: PlanRecord) =>
  learnedRecord(reader, {
    castingId: visit.head.castingId,
    form: visit.head.chamberForm,
    facts: casting,
    depthThou: record.depthAtCentroidIn > 0 ? record.depthAtCentroidIn * 1000 : null,
    settings,
    exceptVisitId: visit.id,
  })

/** What this head's own cut asks, while the owner has not decided; null: it agrees with the record. */
async function ownQuestion(
  reader: Reader,
  { visit, casting, settings }: Dossier,
  cuts: CutFacts,
  { rate }: JudgedRecord,
): Promise<MillQuestion | null> {
  const own = shopCutOf(cuts)
  const cut = own && taughtBy({ ...own, whyNot: '' }, centroidShareOf(casting), settings.depthSettingErrorThou).cut
  if (!own || !cut || own.before === null || own.after === null) return null
  if (Math.abs(zOfCut(cut, rate, scatterOf(settings))) <= screenLimit) return null
  const [kept] = await shopCutsOfVisits(reader, [visit.id])
  if (kept?.ruling) return null
  const { depthThou, beforeCc, afterCc } = cut
  return { tookCc: beforeCc - afterCc, expectedCc: rate.ccPerThou * depthThou, depthThou }
}
