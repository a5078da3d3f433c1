import { chamberMean, headCc, type BuretteFacts, type ChamberMean } from '../chamber/burette'
import { causedBy, makesDoAgain } from '../route/do-again'
import { stepLabel } from '../route/table'
import { confirmedCut } from '../route/outside-cuts'
import type { OrderFacts, RouteFacts, VisitEvent } from '../route/types'
import type { StepId } from '../route/step-ids'
import { cornersOf, edgesCut, type Corners, type Deck, type EdgeDepths } from '../straightness/corners-fit'

type Reading = RouteFacts['readings'][number]

/** One visit, as far as it can teach a rate. */
export type CutFacts = {
  /** Every reading that stands, repeats too, oldest first. */
  readonly readings: readonly Reading[]
  readonly events: readonly VisitEvent[]
  readonly orders: readonly OrderFacts[]
  readonly deck: Deck
  readonly burette: BuretteFacts
}

/** What the deck cuts of one head took on one visit. */
export type ShopCut = {
  /** Where in time the last of the cuts lies. */
  readonly seq: number
  /** Depth of all deck cuts together at each edge; null: not measured. */
  readonly edges: EdgeDepths | null
  /** Mean of the chambers that were read both times; null: not read. */
  readonly before: KnownCc | null
  readonly after: KnownCc | null
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
 * Depth: what was read at the machine; of a vendor's cut, and of an angle cut nobody read, the plane through the corner
 * thicknesses: what a plan wanted is no measurement. Before: the last cc before the first cut. After: the finished cc;
 * else the one chamber that was read at size, at the stop or on arrival, since every chamber loses alike. One observation
 * is one head's mean, over the chambers that were read both times. It teaches nothing when seat, valve, chamber or port
 * work, or other checking valves or plug, lie between the two.
 * Example: 64.2, 63.8, 64.1, 63.9 before, 18 thou from touch-off, 60.9, 61.1, 61.2, 60.8 finished → 64.0 to 61.0 cc, 0.018
 * in at both edges.
 * Derived: differences of the readings before and after the cuts.
 */
export function shopCutOf(facts: CutFacts): ShopCut | null {
  const made = cutsMade(facts)
  const [first, last] = [made.at(0), made.at(-1)]
  if (first === undefined || last === undefined) return null
  const edges = edgesOf(facts)
  const cc = ccAcross(facts, first, last)
  const whyNot = edges === null ? 'its depth was not measured' : cc.whyNot
  return { seq: last, edges, before: cc.before, after: cc.after, whyNot }
}

const at = (facts: CutFacts, stepId: StepId, kind: Reading['kind']): readonly Reading[] =>
  facts.readings.filter((reading) => reading.step.stepId === stepId && reading.kind === kind)

type Figure = Reading & { readonly value: number }
const figures = (readings: readonly Reading[]): readonly Figure[] =>
  readings.filter((reading): reading is Figure => reading.value !== null)

/** When the deck was cut, oldest first: when its depth was read, or else ticked, and when a vendor's came back. */
function cutsMade(facts: CutFacts): readonly number[] {
  const here = (['angle-cut', 'flat-cut'] as const).flatMap((stepId) => {
    const read = figures(at(facts, stepId, stepId === 'flat-cut' ? 'cut-depth' : 'edge-depth'))
    return read.length > 0 ? read.map((reading) => reading.seq) : ticksOf(facts.events, stepId)
  })
  return [...here, ...vendorCuts(facts).map((order) => order.receivedSeq)].sort((a, b) => a - b)
}

type Received = OrderFacts & { readonly receivedSeq: number }
const vendorCuts = ({ orders }: CutFacts): readonly Received[] =>
  orders
    .filter((order): order is Received => order.receivedSeq !== null && confirmedCut(order))
    .sort((a, b) => a.receivedSeq - b.receivedSeq)

/** A tick that was taken back did nothing. */
function ticksOf(events: readonly VisitEvent[], stepId: StepId): readonly number[] {
  const own = events.filter((event) => event.step?.stepId === stepId)
  const lastUndo = own.findLast((event) => event.kind === 'undo')?.seq ?? 0
  return own.filter((event) => event.kind === 'tick' && event.seq > lastUndo).map((event) => event.seq)
}

// ─── How deep ──────────────────────────────────────────────────────────────────────────────────────────────────────

/** A vendor's cut is known by the corners alone; what was cut here after it is known by what was read at the machine. */
function edgesOf(facts: CutFacts): EdgeDepths | null {
  const outside = vendorCuts(facts).at(-1)
  const here = readAtMachine(facts, outside?.receivedSeq ?? 0)
  if (!outside) return here ?? byCorners(facts, 'finished', null)
  const arrived = byCorners(facts, 'arrival-figures', outside.orderId)
  return arrived && here ? sum(arrived, here) : byCorners(facts, 'finished', null)
}

const sum = (a: EdgeDepths, b: EdgeDepths): EdgeDepths => ({
  shallowIn: a.shallowIn + b.shallowIn,
  deepIn: a.deepIn + b.deepIn,
})

/** Flat depth from touch-off and both edges of an angle cut, of what was cut here since; null: a cut that nobody read. */
function readAtMachine(facts: CutFacts, since: number): EdgeDepths | null {
  const flat = figures(at(facts, 'flat-cut', 'cut-depth')).findLast((reading) => reading.seq > since)
  const edge = (name: string) =>
    figures(at(facts, 'angle-cut', 'edge-depth')).findLast((reading) => reading.point === name && reading.seq > since)
  const [intake, exhaust] = [edge('intake'), edge('exhaust')]
  const unread = (stepId: 'angle-cut' | 'flat-cut', read: boolean): boolean =>
    !read && ticksOf(facts.events, stepId).some((seq) => seq > since)
  if (unread('flat-cut', flat !== undefined)) return null
  if (unread('angle-cut', intake !== undefined && exhaust !== undefined)) return null
  const level = { shallowIn: flat?.value ?? 0, deepIn: flat?.value ?? 0 }
  if (!intake || !exhaust) return intake || exhaust ? null : level
  const [shallow, deep] = facts.deck.deepEdge === 'exhaust' ? [intake, exhaust] : [exhaust, intake]
  return sum(level, { shallowIn: shallow.value, deepIn: deep.value })
}

function byCorners(facts: CutFacts, stepId: 'arrival-figures' | 'finished', orderId: string | null): EdgeDepths | null {
  const cornersAt = (of: StepId, order: string | null): Corners =>
    cornersOf(at(facts, of, 'thickness').filter((reading) => reading.step.orderId === order))
  return edgesCut(facts.deck, cornersAt('thickness', null), cornersAt(stepId, orderId))
}

// ─── What it took ──────────────────────────────────────────────────────────────────────────────────────────────────

type Across = Pick<ShopCut, 'before' | 'after' | 'whyNot'>

const without = (whyNot: string): Across => ({ before: null, after: null, whyNot })

function ccAcross(facts: CutFacts, first: number, last: number): Across {
  const works = chamberWorks(facts)
  const before = roundBefore(facts, works, first)
  if (!before) return without('no cc was read before the cut')
  const rounds = roundsAfter(facts, last).map((round) =>
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

/** The last step before the first cut that read cc. */
function roundBefore(facts: CutFacts, works: readonly Work[], first: number): Round | null {
  const readings = figures([...at(facts, 'chambers', 'cc'), ...at(facts, 'open-chamber', 'cc')])
    .filter((reading) => reading.seq < first)
    .sort((a, b) => a.seq - b.seq)
  const stepId = readings.at(-1)?.step.stepId
  if (!stepId) return null
  const round = { stepId, readings: readings.filter((reading) => reading.step.stepId === stepId) }
  return undisturbed(
    round,
    (reading) => !works.some((work) => work.stepId !== stepId && work.seq > reading.seq && work.seq < first),
  )
}

/** Rounds of cc after the last cut, the best first. What one chamber read at the machine is chamber 1's. */
function roundsAfter(facts: CutFacts, last: number): readonly Round[] {
  const since = (stepId: StepId) => figures(at(facts, stepId, 'cc')).filter((reading) => reading.seq >= last)
  const mill = since('flat-cut')
  const size = mill.filter((reading) => reading.point === 'at-size')
  const rounds: Round[] = [
    { stepId: 'finished', readings: since('finished') },
    {
      stepId: 'flat-cut',
      readings: (size.length > 0 ? size : mill).map((reading) => ({ ...reading, point: '1' })),
    },
    { stepId: 'arrival-figures', readings: since('arrival-figures') },
  ]
  return rounds.filter((round) => round.readings.length > 0)
}

function compared(facts: CutFacts, works: readonly Work[], before: Round, after: Round): Across {
  const [from, to] = [meansOf(before, facts.burette), meansOf(after, facts.burette)]
  const both = [...from.keys()].filter((point) => to.has(point))
  const over = (means: ReadonlyMap<string, ChamberMean>): KnownCc | null => {
    const head = headCc(both.flatMap((point) => means.get(point) ?? []))
    return head.ok ? { cc: head.value.meanCc, uCc: head.value.uCc } : null
  }
  const whyNot = both.length === 0 ? 'no chamber was read both before and after' : between(facts, works, before, after)
  return { before: over(from), after: over(to), whyNot }
}

/** Several readings of one chamber are repeats of it. */
function meansOf({ readings }: Round, burette: BuretteFacts): ReadonlyMap<string, ChamberMean> {
  const means = new Map<string, ChamberMean>()
  for (const point of new Set(readings.map((reading) => reading.point))) {
    const values = readings.flatMap((reading) => (reading.point === point ? [reading.value] : []))
    const mean = chamberMean(values, burette)
    if (mean.ok) means.set(point, mean.value)
  }
  return means
}

/** What lies between two rounds of cc that changed a chamber otherwise than the cut did; '' for nothing. */
function between(facts: CutFacts, works: readonly Work[], before: Round, after: Round): string {
  const seqs = (round: Round) => round.readings.map((reading) => reading.seq)
  const [from, to] = [Math.min(...seqs(before)), Math.max(...seqs(after))]
  const work = works.find((one) => one.seq > from && one.seq < to)
  if (work) return `${work.words} between the two cc`
  if (differs(facts, 'valves-used', before, after)) return 'other valves were in for the second cc'
  return differs(facts, 'plug-used', before, after) ? 'another plug was in for the second cc' : ''
}

/** Named at both and not the same; at the mill nobody names them again, and they are taken to be those of before. */
function differs(facts: CutFacts, kind: 'valves-used' | 'plug-used', before: Round, after: Round): boolean {
  const named = (stepId: StepId) =>
    at(facts, stepId, kind)
      .findLast((reading) => reading.text !== '')
      ?.text.trim()
      .toLowerCase()
  const first = named(before.stepId) ?? named('chambers')
  const second = named(after.stepId)
  return first !== undefined && second !== undefined && first !== second
}

type Work = { readonly stepId: StepId | null; readonly seq: number; readonly words: string }

/** Work after which the finished cc must be read again, but for the cut itself: it changes what a chamber holds. */
const chamberSteps: readonly StepId[] = Object.entries(causedBy)
  .filter(([cause]) => cause !== 'deck-cut' && cause !== 'angle-cut')
  .filter(([cause]) => makesDoAgain[cause as keyof typeof causedBy].includes('finished'))
  .flatMap(([, steps]) => steps as readonly StepId[])

function chamberWorks(facts: CutFacts): readonly Work[] {
  const steps = chamberSteps.flatMap((stepId) => {
    const read = facts.readings.filter((reading) => reading.step.stepId === stepId)
    const outside = facts.orders.filter((order) => order.confirmed.includes(stepId))
    const seqs = [
      ...ticksOf(facts.events, stepId),
      ...read.map((reading) => reading.seq),
      ...outside.flatMap((order) => order.receivedSeq ?? []),
    ]
    return seqs.map((seq) => ({ stepId, seq, words: stepLabel(stepId).toLowerCase() }))
  })
  const valves = facts.events.filter((event) => event.kind === 'valve-changed')
  return [...steps, ...valves.map(({ seq }) => ({ stepId: null, seq, words: 'a valve was changed' }))]
}
