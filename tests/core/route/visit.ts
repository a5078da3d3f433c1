import { readingSpecs } from '@/lib/core/readings/specs'
import type { ReadingKind } from '@/lib/core/readings/types'
import { tickRefusal } from '@/lib/words/ticks'
import { canTick } from '@/lib/core/route/can-tick'
import { completeness } from '@/lib/core/route/completeness'
import { computeRoute } from '@/lib/core/route/compute-route'
import { keyOf, sameKey, type StepRef } from '@/lib/core/route/keys'
import { defaultRouteSettings } from '@/lib/core/route/settings'
import type { EventKind, OrderFacts, PlanFacts, RouteFacts, RouteStep } from '@/lib/core/route/types'
import type { StepId, StepKey } from '@/lib/core/route/step-ids'
import { reasonText, waitText, whyText } from '@/lib/words/route'
import { lackText } from '@/lib/words/lacks'

/** A new bare head of an engine with one manifold a head, no plan yet, nothing else known: no condition of the step table holds. */
export const plain: RouteFacts = {
  source: 'customer',
  used: false,
  cameAssembled: false,
  overheated: false,
  ordered: [],
  chambers: 4,
  plan: null,
  previousPlan: null,
  targetCc: null,
  classMinCc: null,
  hasEngineData: false,
  camInHead: null,
  manifoldSpansHeads: false,
  remainingPtvIn: null,
  finishAsked: false,
  orders: [],
  events: [],
  readings: [],
  partsWaits: [],
  openHolds: [],
  openFindings: 0,
  settings: defaultRouteSettings,
}

const plan = (facts: Partial<PlanFacts>): PlanFacts => ({
  kind: 'none',
  flatIn: 0,
  angleIn: 0,
  angleDeg: 0,
  deepestIn: 0,
  totalRemovedIn: null,
  intakeSideIn: null,
  ptvLossIn: null,
  rateProven: true,
  ...facts,
})

export const noCut = plan({})
export const cleanUp = (stopAtIn: number): PlanFacts =>
  plan({ kind: 'clean-up', flatIn: stopAtIn, deepestIn: stopAtIn })
export const flat = (flatIn: number, more: Partial<PlanFacts> = {}): PlanFacts =>
  plan({ kind: 'flat', flatIn, deepestIn: flatIn, ...more })
export const angle = (angleIn: number, more: Partial<PlanFacts> = {}): PlanFacts =>
  plan({ kind: 'angle', angleIn, angleDeg: 0.5, deepestIn: angleIn, ...more })
export const angleFlat = (angleIn: number, flatIn: number, more: Partial<PlanFacts> = {}): PlanFacts =>
  plan({ kind: 'angle-flat', angleIn, flatIn, angleDeg: 0.5, deepestIn: angleIn + flatIn, ...more })

export const order = (orderId: string, scope: StepId[], more: Partial<OrderFacts> = {}): OrderFacts => ({
  orderId,
  number: `26-${orderId}`,
  vendor: 'Northgate Grinding',
  scope,
  angleIn: 0,
  flatIn: 0,
  sentSeq: null,
  receivedSeq: null,
  confirmed: [],
  seatsIn: true,
  ...more,
})

export type Answer = readonly [kind: ReadingKind, point: string, answer: number | string]

/** Believable answers that say: all is well. */
const goodFigures: Partial<Record<ReadingKind, number>> = {
  cc: 60,
  thickness: 4.5,
  straightness: 0,
  'seat-depth': 0.03,
  recession: 0.035,
  protrusion: 0.07,
  flow: 200,
  'cut-depth': 0.018,
  'edge-depth': 0.063,
}

export function goodAnswer(kind: ReadingKind): number | string {
  const spec = readingSpecs[kind]
  if (spec.form === 'figure') return goodFigures[kind] ?? 0.02
  return spec.choices?.find((choice) => !choice.bad)?.value ?? 'as it should be'
}

/**
 * One head's stay, told as it happens: every call appends an event with the next number, as the shop's log does.
 * Nothing here decides anything; it only writes down facts.
 */
export class Visit {
  private seq = 0

  constructor(public facts: RouteFacts) {}

  static of(facts: Partial<RouteFacts>): Visit {
    return new Visit({ ...plain, ...facts })
  }

  copy(): Visit {
    const visit = new Visit(this.facts)
    visit.seq = this.seq
    return visit
  }

  private event(kind: EventKind, step: StepKey | null): number {
    this.seq += 1
    this.facts = { ...this.facts, events: [...this.facts.events, { seq: this.seq, kind, step }] }
    return this.seq
  }

  /** Enters answers at a step, keeping the newest at each point. */
  read(at: StepRef | StepKey, ...answers: Answer[]): this {
    const step = typeof at === 'string' ? keyOf(at) : at
    const seq = this.event('read', step)
    const fresh = answers.map(([kind, point, answer]) => ({
      id: `r${seq}-${kind}-${point}`,
      seq,
      kind,
      point,
      value: typeof answer === 'number' ? answer : null,
      text: String(answer),
      notTaken: null,
      step,
    }))
    const old = this.facts.readings.filter(
      (reading) =>
        !fresh.some(
          ({ kind, point }) => sameKey(reading.step, step) && kind === reading.kind && point === reading.point,
        ),
    )
    this.facts = { ...this.facts, readings: [...old, ...fresh] }
    return this
  }

  note(kind: EventKind, at: StepRef | StepKey | null = null): this {
    this.event(kind, typeof at === 'string' ? keyOf(at) : at)
    return this
  }

  /** Ticks without asking whether it may be, with all that is owed: for facts that are given. */
  ticked(...refs: StepRef[]): this {
    for (const ref of refs) this.answerWhatIsOwed(keyOf(ref)).note('tick', ref)
    return this
  }

  /** Gives every answer a step owes, those given here first, and ticks it if it may be ticked. */
  does(at: StepRef | StepKey, ...answers: Answer[]): this {
    const key = typeof at === 'string' ? keyOf(at) : at
    if (answers.length > 0) this.read(key, ...answers)
    this.answerWhatIsOwed(key)
    const may = canTick(this.facts, key)
    if (!may.ok) throw new Error(`not ticked: ${tickRefusal(may.refused).message}`)
    return this.note('tick', key)
  }

  /** Good answers to all that is owed, and to what these answers call for in turn. */
  answerWhatIsOwed(key: StepKey): this {
    const owed = this.step(key)?.owes.flatMap(({ kind, missing }) =>
      missing.map((point): Answer => [kind, point, goodAnswer(kind)]),
    )
    return owed && owed.length > 0 ? this.read(key, ...owed).answerWhatIsOwed(key) : this
  }

  /** A new plan version; the one before is kept to tell what is new. */
  plans(next: PlanFacts): this {
    this.event('plan', null)
    this.facts = { ...this.facts, previousPlan: this.facts.plan, plan: next }
    return this
  }

  sends(sent: OrderFacts): this {
    const seq = this.event('sent', null)
    this.facts = { ...this.facts, orders: [...this.facts.orders, { ...sent, sentSeq: seq }] }
    return this
  }

  receives(orderId: string, confirmed: StepId[], more: Partial<OrderFacts> = {}): this {
    const seq = this.event('received', null)
    const orders = this.facts.orders.map((entry) =>
      entry.orderId === orderId ? { ...entry, ...more, receivedSeq: seq, confirmed } : entry,
    )
    this.facts = { ...this.facts, orders }
    return this
  }

  /** A scope step of an order is seen done after the arrival. */
  confirms(orderId: string, stepId: StepId): this {
    const seq = this.event('confirm', { stepId, occurrence: '', orderId })
    return this.order(orderId, (entry) => ({
      confirmed: [...entry.confirmed, stepId],
      confirmedSeqs: { ...entry.confirmedSeqs, [stepId]: seq },
    }))
  }

  rejects(orderId: string, why: string): this {
    const seq = this.event('reject', null)
    return this.order(orderId, () => ({ rejected: { seq, why } }))
  }

  private order(orderId: string, change: (entry: OrderFacts) => Partial<OrderFacts>): this {
    const orders = this.facts.orders.map((entry) =>
      entry.orderId === orderId ? { ...entry, ...change(entry) } : entry,
    )
    this.facts = { ...this.facts, orders }
    return this
  }

  knows(more: Partial<RouteFacts>): this {
    this.facts = { ...this.facts, ...more }
    return this
  }

  get route(): RouteStep[] {
    return computeRoute(this.facts)
  }

  /** As it is read: what the codes say in words. */
  step(at: StepRef | StepKey): Spoken | undefined {
    const key = typeof at === 'string' ? keyOf(at) : at
    const step = this.route.find((candidate) => sameKey(candidate, key))
    return step && spoken(step)
  }

  state(at: StepRef | StepKey): string {
    return this.step(at)?.state ?? 'not on the route'
  }

  get missing(): string[] {
    return completeness(this.facts).map((entry) => lackText(entry.lack))
  }

  /** Does whatever may be done, first come first served, until nothing more can be: a patient machinist. */
  finishes(): this {
    for (;;) {
      const next = this.route.find(
        ({ state, waitsFor }) =>
          (state === 'ready' || state === 'started' || state === 'do again') && waitsFor.length === 0,
      )
      if (!next) return this
      this.does({ stepId: next.stepId, occurrence: next.occurrence, orderId: next.orderId })
    }
  }
}

export type Spoken = Omit<RouteStep, 'why' | 'reason' | 'waitsFor'> & {
  readonly why: string
  readonly reason: string
  readonly waitsFor: readonly string[]
}

export const spoken = (step: RouteStep): Spoken => ({
  ...step,
  why: whyText(step.why),
  reason: reasonText(step.reason),
  waitsFor: step.waitsFor.map(waitText),
})

export const arrival = (stepId: 'arrival-count' | 'arrival-figures', orderId: string): StepKey => ({
  stepId,
  occurrence: '',
  orderId,
})

/** The steps a visit needs, by their names in the tables. */
export const needed = (facts: RouteFacts): string[] =>
  computeRoute(facts)
    .filter((step) => step.state !== 'not needed')
    .map((step) =>
      step.stepId === 'flow' ? `flow-${step.occurrence}` : `${step.stepId}${step.orderId ? `@${step.orderId}` : ''}`,
    )
