import { headCc, type BuretteFacts, type ChamberMean } from '../chamber/burette'
import {
  chamberWorks,
  cutsMade,
  figures,
  readAtStep,
  ticksOf,
  vendorCuts,
  type ChamberWork,
  type ChangeFacts,
  type Figure,
} from '../chamber/changes'
import { isMillPoint } from '../chamber/mill-point'
import { ccOf } from '../at-mill/cc-at'
import { touchOffDepth } from '../at-mill/touch-off'
import type { StepId } from '../route/step-ids'
import { stepLabel } from '../route/table'
import { cornersOf, edgesCut, type Corners, type Deck, type EdgeDepths } from '../straightness/corners-fit'
import { cornersOnOnePlane } from '../straightness/corner-plane'

/** One visit, as far as it can teach a rate. */
export type CutFacts = ChangeFacts & {
  readonly deck: Deck
  readonly burette: BuretteFacts
}

/** What a depth was measured by. */
export type DepthBy = 'touch-off' | 'corners' | 'both'

/** What the deck cuts of one head took on one visit. */
export type ShopCut = {
  /** Where in time the last of the cuts lies. */
  readonly seq: number
  /** Depth of all deck cuts together at each edge; null: not measured. */
  readonly edges: EdgeDepths | null
  readonly depthBy: DepthBy
  /** Mean of the chambers that were read both times; null: not read. */
  readonly before: KnownCc | null
  readonly after: KnownCc | null
  /** Those chambers, by number. */
  readonly chambers: readonly string[]
  /** Why it teaches no rate, in words; '' when nothing stands against it. */
  readonly whyNot: string
}
export type KnownCc = { readonly cc: number; readonly uCc: number }

/**
 * What one visit's deck cuts took off the deck and out of the chambers, as measured; null when nothing was cut.
 *
 * @param facts readings in the core's units; the deck's size 1–20 and 1–60 in where known
 * @returns depths at both edges in inches and cc before and after with their standard uncertainties
 *
 * Depth: by four corners before and after, where the fourth lies on the plane of the others; else what was read at the
 * machine; what a plan wanted is no measurement. Before: the last cc before the first cut. After: the finished cc; else
 * what was read at size, at the stop or on arrival, since every chamber loses alike. One observation is one head's mean,
 * over the chambers that were read both times. Where chamber work lies between two passes, the longest stretch without such
 * work is taken. It teaches nothing when seat, valve, chamber or port work, or other checking valves or plug, lie between
 * the two, or while a step it rests on is not ticked.
 * Example: 64.2, 63.8, 64.1, 63.9 before, 18 thou from touch-off, 60.9, 61.1, 61.2, 60.8 finished → 64.0 to 61.0 cc, 0.018
 * in at both edges.
 * Derived: differences of the readings before and after the cuts.
 */
export function shopCutOf(facts: CutFacts): ShopCut | null {
  const made = cutsMade(facts)
  const [first, last] = [made.at(0), made.at(-1)]
  if (first === undefined || last === undefined) return null
  const depth = depthOf(facts, last)
  const cc = ccAcross(facts, first, last)
  const whole: ShopCut = {
    seq: last,
    edges: depth.edges,
    depthBy: depth.by,
    ...cc,
    whyNot: depth.whyNot || cc.whyNot || unticked(facts, depth.by),
  }
  return (whole.whyNot === '' ? null : longestStretch(facts, last)) ?? whole
}

/** The longest stretch that teaches, where the whole does not: two passes at the mill with work on the chambers between. */
function longestStretch(facts: CutFacts, last: number): ShopCut | null {
  const marks = figures(readAtStep(facts, 'flat-cut', 'cut-depth'))
  const works = chamberWorks(facts)
  const parts = works.length === 0 || marks.length < 2 ? [] : works.map(({ seq }) => seq)
  const bounds = [0, ...parts.sort((a, b) => a - b), Infinity]
  const stretches = bounds.slice(1).flatMap((to, at) => partOf(facts, bounds[at] ?? 0, to) ?? [])
  const best = stretches.reduce<ShopCut | null>((most, one) => (depthIn(one) > depthIn(most) ? one : most), null)
  return best && { ...best, seq: last }
}

const depthIn = (cut: ShopCut | null): number => cut?.edges?.shallowIn ?? 0

/** One stretch between two works, as if it were all there was; null when it teaches nothing or was not a flat cut alone. */
function partOf(facts: CutFacts, from: number, to: number): ShopCut | null {
  const inside = ({ seq }: { readonly seq: number }): boolean => seq >= from && seq < to
  const passes = figures(readAtStep(facts, 'flat-cut', 'cut-depth')).filter(inside)
  const [first, last] = [passes.at(0), passes.at(-1)]
  if (!first || !last || cutsMade(facts).some((seq) => inside({ seq }) && !passes.some((pass) => pass.seq === seq))) {
    return null
  }
  const earlier = touchOffDepth(facts.readings.filter(({ seq }) => seq < first.seq)).totalIn
  const takenIn = touchOffDepth(facts.readings.filter(({ seq }) => seq <= last.seq)).totalIn - earlier
  const part = { ...facts, readings: facts.readings.filter((reading) => inside(reading) || reading.kind !== 'cc') }
  const cc = ccAcross(part, first.seq, last.seq, to)
  const whyNot = cc.whyNot || unticked(facts, 'touch-off')
  const edges = { shallowIn: takenIn, deepIn: takenIn }
  return whyNot === '' && takenIn > 0 ? { seq: last.seq, edges, depthBy: 'touch-off', ...cc, whyNot } : null
}

/** The cut itself must be ticked where it was made here and its depth is its own. */
function unticked({ events, readings }: CutFacts, by: DepthBy): string {
  const here = (['flat-cut', 'angle-cut'] as const).find(
    (stepId) => readings.some(({ step }) => step.stepId === stepId) && ticksOf(events, stepId).length === 0,
  )
  return by === 'corners' || here === undefined ? '' : notTicked(here)
}

const notTicked = (stepId: StepId): string => `${stepLabel(stepId).toLowerCase()} is not ticked`

// ─── How deep ──────────────────────────────────────────────────────────────────────────────────────────────────────

type Depth = { readonly edges: EdgeDepths | null; readonly by: DepthBy; readonly whyNot: string }

const notMeasured = 'its depth was not measured'

/**
 * By four sound corners since the last cut; else here by what was read at the machine, a vendor's part by the corners of
 * its arrival; else by the corners there are.
 */
function depthOf(facts: CutFacts, last: number): Depth {
  const outside = vendorCuts(facts).at(-1)
  const end = byCorners(facts, 'finished', null, last)
  if (end.edges && end.four) return { edges: end.edges, by: 'corners', whyNot: '' }
  const here = readAtMachine(facts, outside?.receivedSeq ?? 0)
  if (!outside && here) return { edges: here, by: 'touch-off', whyNot: '' }
  const arrived = outside ? byCorners(facts, 'arrival-figures', outside.orderId, 0) : end
  if (outside && arrived.edges && here) {
    const cutHere = here.shallowIn !== 0 || here.deepIn !== 0
    return { edges: sum(arrived.edges, here), by: cutHere ? 'both' : 'corners', whyNot: '' }
  }
  const unsound = end.unsound || arrived.unsound
  return { edges: end.edges, by: 'corners', whyNot: end.edges ? '' : unsound ? offPlane : notMeasured }
}

const offPlane = 'one of its corners does not lie with the other three'

const sum = (a: EdgeDepths, b: EdgeDepths): EdgeDepths => ({
  shallowIn: a.shallowIn + b.shallowIn,
  deepIn: a.deepIn + b.deepIn,
})

/** Flat depth from touch-off and both edges of an angle cut, of what was cut here since; null: a cut that nobody read. */
function readAtMachine(facts: CutFacts, since: number): EdgeDepths | null {
  const flat = touchOffDepth(facts.readings.filter(({ seq }) => seq > since))
  const edge = (name: string) =>
    figures(readAtStep(facts, 'angle-cut', 'edge-depth')).findLast(
      (reading) => reading.point === name && reading.seq > since,
    )
  const [intake, exhaust] = [edge('intake'), edge('exhaust')]
  const unread = (stepId: 'angle-cut' | 'flat-cut', read: boolean): boolean =>
    !read && ticksOf(facts.events, stepId).some((seq) => seq > since)
  if (unread('flat-cut', flat.seq !== null)) return null
  if (unread('angle-cut', intake !== undefined && exhaust !== undefined)) return null
  const level = { shallowIn: flat.totalIn, deepIn: flat.totalIn }
  if (!intake || !exhaust) return intake || exhaust ? null : level
  const [shallow, deep] = facts.deck.deepEdge === 'exhaust' ? [intake, exhaust] : [exhaust, intake]
  return sum(level, { shallowIn: shallow.value, deepIn: deep.value })
}

type ByCorners = { readonly edges: EdgeDepths | null; readonly four: boolean; readonly unsound: boolean }

function byCorners(
  facts: CutFacts,
  stepId: 'arrival-figures' | 'finished',
  orderId: string | null,
  since: number,
): ByCorners {
  const cornersAt = (of: StepId, order: string | null, from: number): Corners =>
    cornersOf(readAtStep(facts, of, 'thickness').filter(({ step, seq }) => step.orderId === order && seq >= from))
  const [before, after] = [cornersAt('thickness', null, 0), cornersAt(stepId, orderId, since)]
  const sound = [cornersOnOnePlane(before), cornersOnOnePlane(after)]
  if (sound.includes(false)) return { edges: null, four: false, unsound: true }
  return { edges: edgesCut(facts.deck, before, after), four: !sound.includes(null), unsound: false }
}

// ─── What it took ──────────────────────────────────────────────────────────────────────────────────────────────────

type Across = Pick<ShopCut, 'before' | 'after' | 'chambers' | 'whyNot'>

const without = (whyNot: string): Across => ({ before: null, after: null, chambers: [], whyNot })

/** `until`: what was read from this event on belongs to another stretch. */
function ccAcross(facts: CutFacts, first: number, last: number, until = Infinity): Across {
  const works = chamberWorks(facts)
  const before = roundBefore(facts, works, first)
  if (!before) return without('no cc was read before the cut')
  const rounds = roundsAfter(facts, last, until).map((round) =>
    undisturbed(round, ({ seq }) => !works.some((work) => work.seq >= last && work.seq < seq)),
  )
  if (rounds.length === 0) return without('no cc was read after the cut')
  // What the step of the cc before did itself, such as opening the chamber, is in them already.
  const since = works.filter((work) => work.stepId !== before.stepId || work.seq >= first)
  const answers = rounds.map((after) => compared(facts, since, before, after))
  return answers.find((answer) => answer.whyNot === '') ?? (answers[0] as Across)
}

type Round = { readonly stepId: StepId; readonly readings: readonly Figure[] }

/** Only those repeats that no work on the chamber lies beside; all of them when that leaves none. */
function undisturbed(round: Round, stands: (reading: Figure) => boolean): Round {
  const readings = round.readings.filter(stands)
  return readings.length > 0 ? { ...round, readings } : round
}

/** The last step before the first cut that read cc, with what was read again at the mill. */
function roundBefore(facts: CutFacts, works: readonly ChamberWork[], first: number): Round | null {
  const cc = (stepId: StepId) => readAtStep(facts, stepId, 'cc')
  const bench = figures([...cc('chambers'), ...cc('open-chamber'), ...cc('finished')])
    .filter((reading) => reading.seq < first)
    .sort((a, b) => a.seq - b.seq)
  const stepId = bench.at(-1)?.step.stepId
  if (!stepId) return null
  const from = bench.find((reading) => reading.step.stepId === stepId)?.seq ?? 0
  const mill = figures(cc('flat-cut')).filter(({ seq }) => seq < first && seq > from)
  const readings = [...bench.filter((reading) => reading.step.stepId === stepId), ...mill]
  return undisturbed(
    { stepId, readings },
    (reading) => !works.some((work) => work.stepId !== stepId && work.seq > reading.seq && work.seq < first),
  )
}

/** Rounds of cc after the last cut, the best first. */
function roundsAfter(facts: CutFacts, last: number, until: number): readonly Round[] {
  const since = (stepId: StepId) =>
    figures(readAtStep(facts, stepId, 'cc')).filter((reading) => reading.seq >= last && reading.seq < until)
  const mill = since('flat-cut')
  const size = mill.filter((reading) => isMillPoint(reading.point, 'at-size'))
  const rounds: Round[] = [
    { stepId: 'finished', readings: since('finished') },
    { stepId: 'flat-cut', readings: size.length > 0 ? size : mill },
    { stepId: 'arrival-figures', readings: since('arrival-figures') },
  ]
  return rounds.filter((round) => round.readings.length > 0)
}

function compared(facts: CutFacts, works: readonly ChamberWork[], before: Round, after: Round): Across {
  const [from, to] = [ccOf(before.readings, facts.burette).chambers, ccOf(after.readings, facts.burette).chambers]
  const both = [...from.keys()].filter((chamber) => to.has(chamber))
  const over = (means: ReadonlyMap<string, ChamberMean>): KnownCc | null => {
    const head = headCc(both.flatMap((chamber) => means.get(chamber) ?? []))
    return head.ok ? { cc: head.value.meanCc, uCc: head.value.uCc } : null
  }
  const whyNot = both.length === 0 ? 'no chamber was read both before and after' : between(facts, works, before, after)
  return { before: over(from), after: over(to), chambers: both, whyNot }
}

/** What lies between two rounds of cc that changed a chamber otherwise than the cut did, or is not ticked; '' for nothing. */
function between(facts: CutFacts, works: readonly ChamberWork[], before: Round, after: Round): string {
  const seqs = (round: Round) => round.readings.map((reading) => reading.seq)
  const [from, to] = [Math.min(...seqs(before)), Math.max(...seqs(after))]
  const work = works.find((one) => one.seq > from && one.seq < to)
  if (work) return `${work.words} between the two cc`
  if (differs(facts, 'valves-used', before, after)) return 'other valves were in for the second cc'
  if (differs(facts, 'plug-used', before, after)) return 'another plug was in for the second cc'
  const open = [before, after].find(({ stepId }) => ticksOf(facts.events, stepId).length === 0)
  return open ? notTicked(open.stepId) : ''
}

/** Named at both and not the same; at the mill nobody names them again, and they are taken to be those of before. */
function differs(facts: CutFacts, kind: 'valves-used' | 'plug-used', before: Round, after: Round): boolean {
  const named = (stepId: StepId) =>
    readAtStep(facts, stepId, kind)
      .findLast((reading) => reading.text !== '')
      ?.text.trim()
      .toLowerCase()
  const first = named(before.stepId) ?? named('chambers')
  const second = named(after.stepId)
  return first !== undefined && second !== undefined && first !== second
}
