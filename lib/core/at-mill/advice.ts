import { advisePass, smallestKnownTo, toleranceInU, type HeadAtPass, type Pass } from '../rate/next-pass'
import type { Rate } from '../rate/rate'
import { asLastRead } from './as-last-read'
import { furtherReadings, type Further } from './further-readings'
import { stateAtMill, stopChamber, type MillFacts, type StateAtMill } from './state-at-mill'
import { touchOffDepth } from './touch-off'

export type MillQuestion = {
  /** What the chambers lost over all that was cut, and what the record expects of it, in cc. */
  readonly tookCc: number
  readonly expectedCc: number
  readonly depthThou: number
}

export type MillInput = MillFacts & {
  /** What the cut shall leave, net of what seat work to come will add. */
  readonly targetCc: number
  readonly toleranceCc: number
  readonly classMinimumCc: number | null
  /** What screened cuts of this record say, in cc per thou. */
  readonly screenedCcPerThou: readonly number[]
  readonly halfFirstPass: boolean
  /** This head's own cut is asked about and nobody has answered. */
  readonly question: MillQuestion | null
  /** The rate is proven and the cut shallow: it may go to size without a reading at the mill. */
  readonly unread: boolean
}

/** The next thing to do at the mill; depths are totals from the touch-off that counts, in thou. */
export type MillAdvice =
  | { readonly code: 'not-measured' }
  | ({ readonly code: 'question' } & MillQuestion)
  | {
      readonly code: 'cut'
      readonly stopAtThou: number
      readonly offThou: number
      readonly moreThou: number
      readonly nominalThou: number
      readonly bound: Pass['bound']
      readonly leavesCc: number
      readonly thenRead: string
    }
  | { readonly code: 'read-now'; readonly chamber: string; readonly isSmallest: boolean; readonly offThou: number }
  | { readonly code: 'read-more'; readonly further: readonly Further[]; readonly provesCc: number | null }
  | { readonly code: 'too-coarse'; readonly provesCc: number | null }
  | { readonly code: 'whole-way'; readonly offThou: number }
  | { readonly code: 'nothing'; readonly atTarget: boolean }
  | { readonly code: 'hold'; readonly under: 'target' | 'class-minimum' }
  | { readonly code: 'no-safe-pass'; readonly bound: 'tolerance' | 'class-minimum' }
  | { readonly code: 'refused'; readonly message: string }

export type AdviceAtMill = {
  readonly advice: MillAdvice
  /** As it was last read; null: no chamber was measured before the cut. */
  readonly state: StateAtMill | null
}

/**
 * The next thing to do at the mill.
 *
 * @param input depths 0–500 thou, cc 1–400
 * @returns the advice as it stood when the chambers were last read: cutting on toward it is part of the same pass; once the
 *   depth is reached the next thing is to read
 *
 * Example: read 63.0 to 60.0 ± 0.5 by a proven rate, nothing cut → cut to 18.0; 15.5 is off → cut to 18.0, 2.5 more; 18.0 is
 * off → read chamber 1.
 * Derived: `advisePass` on `stateAtMill` at the last reading, held against what is off now.
 */
export function adviseAtMill(input: MillInput): AdviceAtMill {
  const facts = { ...input, cuts: { ...input.cuts, readings: asLastRead(input.cuts.readings) } }
  const state = stateAtMill(facts)
  if (!state) return { advice: { code: 'not-measured' }, state }
  if (input.question) return { advice: { code: 'question', ...input.question }, state }
  return { advice: adviceOn(input, facts, state), state }
}

/** Half the step of a mill: as deep as was advised. */
const reachedThou = 0.25

function adviceOn(input: MillInput, facts: MillFacts, state: StateAtMill): MillAdvice {
  const now = touchOffDepth(input.cuts.readings)
  const wasThou = touchOffDepth(facts.cuts.readings).totalIn * 1000
  const cutSince = now.totalIn * 1000 > wasThou + reachedThou
  const readNow = readOf(input, state, now.fromTouchOffIn * 1000)
  const advised = advisePass({
    ...headAtPass(state, input),
    targetCc: input.targetCc,
    toleranceCc: input.toleranceCc,
    depthErrorThou: input.depthErrorThou,
    ifScreened: input.screenedCcPerThou.flatMap((ccPerThou) => ifScreened(facts, input, ccPerThou)),
    firstPass: state.from !== 'read-since-cut',
    doubted: input.halfFirstPass,
  })
  if (!advised.ok) return cutSince ? readNow : refusedWith(input, state, advised.refusal)
  if (advised.value.kind === 'none') {
    return cutSince ? readNow : { code: 'nothing', atTarget: state.mean.cc <= input.targetCc }
  }
  const pass = advised.value
  const beforeTouchOff = (now.totalIn - now.fromTouchOffIn) * 1000
  const moreThou = wasThou + pass.depthThou - now.totalIn * 1000
  const offThou = now.fromTouchOffIn * 1000
  if (moreThou < reachedThou) return input.unread && pass.isNominal ? { code: 'whole-way', offThou } : readNow
  return {
    code: 'cut',
    stopAtThou: wasThou + pass.depthThou - beforeTouchOff,
    offThou,
    moreThou,
    nominalThou: wasThou + pass.nominalThou - beforeTouchOff,
    bound: pass.bound,
    leavesCc: pass.leavesCc,
    thenRead: readNow.chamber,
  }
}

/** Where a class has a minimum the smallest chamber holds it; else the one that is always read, if it was read before. */
function readOf({ classMinimumCc }: MillInput, { smallest, read }: StateAtMill, offThou: number) {
  const isSmallest = classMinimumCc !== null
  const usual = read.chambers.some(({ chamber }) => chamber === stopChamber) ? stopChamber : smallest.chamber
  return { code: 'read-now' as const, chamber: isSmallest ? smallest.chamber : usual, isSmallest, offThou }
}

function headAtPass({ mean, smallest, rate }: StateAtMill, { classMinimumCc }: MillInput): HeadAtPass {
  return {
    presentCc: mean.cc,
    uPresentCc: mean.uCc,
    covCcPerThou: mean.covCcPerThou,
    rate,
    smallest: classMinimumCc === null ? null : { ...smallest, classMinimumCc },
  }
}

/** The same head if a screened cut is the truth: its rate, known as well as that of a head not yet cut. */
function ifScreened(facts: MillFacts, input: MillInput, ccPerThou: number): HeadAtPass[] {
  const rate: Rate = { ...facts.rate, ccPerThou, firstGuessCcPerThou: facts.rate.firstGuessCcPerThou ?? ccPerThou }
  const state = stateAtMill({ ...facts, rate })
  return state ? [headAtPass(state, input)] : []
}

function refusedWith(
  input: MillInput,
  state: StateAtMill,
  refusal: { readonly code: string; readonly message: string },
): MillAdvice {
  if (refusal.code === 'measure-again') return readMore(input, state)
  const { classMinimumCc, targetCc, toleranceCc } = input
  const underClass = classMinimumCc !== null && state.smallest.cc < classMinimumCc
  if (refusal.code === 'hold') return { code: 'hold', under: underClass ? 'class-minimum' : 'target' }
  if (refusal.code !== 'unreachable') return { code: 'refused', message: refusal.message }
  const tight = classMinimumCc !== null && state.mean.cc > targetCc + toleranceCc
  return tight ? proveClass(input, state, classMinimumCc) : { code: 'no-safe-pass', bound: 'tolerance' }
}

function readMore({ cuts, toleranceCc }: MillInput, { read }: StateAtMill): MillAdvice {
  const { divisionCc } = cuts.burette
  const further = furtherReadings(read, divisionCc, ({ mean }) => mean.uCc, toleranceCc / toleranceInU)
  return further ? { code: 'read-more', further, provesCc: null } : { code: 'too-coarse', provesCc: null }
}

/** How often to read the smallest chamber for half a thou more to be safe; none when the mill alone takes the room. */
function proveClass({ cuts, depthErrorThou }: MillInput, state: StateAtMill, classMinimumCc: number): MillAdvice {
  const { chamber, cc } = state.smallest
  const enoughCc = smallestKnownTo(cc - classMinimumCc, state.rate, depthErrorThou)
  if (enoughCc === null) return { code: 'no-safe-pass', bound: 'class-minimum' }
  const uOf = ({ chambers }: { chambers: readonly { chamber: string; uCc: number }[] }): number =>
    chambers.find((one) => one.chamber === chamber)?.uCc ?? 0
  const further = furtherReadings(state.read, cuts.burette.divisionCc, uOf, enoughCc)
  if (further === null) return { code: 'too-coarse', provesCc: classMinimumCc }
  // Known well enough, and still no pass is safe: the tolerance binds.
  return further.length === 0
    ? { code: 'no-safe-pass', bound: 'class-minimum' }
    : { code: 'read-more', further, provesCc: classMinimumCc }
}
