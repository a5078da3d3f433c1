import { readingSpecs } from '../readings/specs'
import type { ReadingFact, ReadingKind } from '../readings/types'
import { routeInDetail, type DetailedStep } from './compute-route'
import { nothingYet } from './nothing-yet'
import { defaultRouteSettings } from './settings'
import type { PlanFacts, RouteFacts } from './types'
import { cutKinds, flowOccurrences, type CutKind, type WorkId } from './step-ids'
import type { StepRef } from './keys'
import type { RouteRules } from './rules'
import { tableOf } from './table'
import { cutWords } from './words'

/** Labels of the steps that keep a walk from its end; none: the head comes to its hand over. */
export type Walk = {
  readonly goesRound: readonly string[]
  readonly ticks: number
  /** What was ticked, in order, each time it was. */
  readonly order: readonly StepRef[]
}

const settled = ({ state }: DetailedStep): boolean => state === 'done' || state === 'waived' || state === 'not needed'

/**
 * Does everything on a route, always the first step that nothing stands before, as if every reading came out well, until
 * all is done. Steps that wait for each other, or undo each other for ever, are told by name. Takes at most three ticks a
 * step: the longest way round that the tables as they stand ask for is two.
 */
export function walkThrough(facts: RouteFacts): Walk {
  let at = facts
  const ticked = new Map<string, number>()
  const order: StepRef[] = []
  const most = 3 * tableOf(facts.settings.rules).rows.length
  for (let ticks = 0; ticks <= most; ticks += 1) {
    const open = routeInDetail(at).filter((step) => !settled(step))
    if (open.length === 0) return { goesRound: [], ticks, order }
    const next = open.find((step) => step.mustFollow.length === 0)
    if (!next) return { goesRound: open.map(({ label }) => label), ticks, order }
    order.push(next.ref)
    ticked.set(next.label, (ticked.get(next.label) ?? 0) + 1)
    at = afterDoing(next, at)
  }
  return { goesRound: [...ticked].flatMap(([label, times]) => (times > 3 ? [label] : [])), ticks: most, order }
}

function afterDoing({ stepId, occurrence, orderId, owes }: DetailedStep, facts: RouteFacts): RouteFacts {
  const step = { stepId, occurrence, orderId }
  const seq = (facts.events.at(-1)?.seq ?? 0) + 1
  const readings = owes.flatMap(({ kind, missing }) =>
    missing.map((point) => ({ id: `${seq}:${kind}:${point}`, seq, step, ...goodAnswer(kind, point) })),
  )
  return {
    ...facts,
    readings: [...facts.readings, ...readings],
    events: [...facts.events, { seq, kind: 'read', step }, { seq: seq + 1, kind: 'tick', step }],
  }
}

/** An answer that stops nothing: a chamber as it was wanted, the first choice that is not bad. */
function goodAnswer(kind: ReadingKind, point: string): Omit<ReadingFact, 'id' | 'seq'> {
  const { form, choices } = readingSpecs[kind]
  const good = choices?.find((choice) => !choice.bad)?.value ?? 'as it should be'
  const value = kind === 'cc' ? targetCc : 0.1
  return {
    kind,
    point,
    value: form === 'figure' ? value : null,
    text: form === 'figure' ? String(value) : good,
    notTaken: null,
  }
}

const targetCc = 60

const planOf = (kind: CutKind): PlanFacts => {
  const flatIn = kind === 'none' || kind === 'angle' ? 0 : 0.04
  const angleIn = kind === 'angle' || kind === 'angle-flat' ? 0.06 : 0
  return {
    kind,
    flatIn,
    angleIn,
    angleDeg: 0.6,
    deepestIn: flatIn + angleIn,
    totalRemovedIn: flatIn + angleIn,
    intakeSideIn: 0.05,
    ptvLossIn: flatIn + angleIn,
  }
}

/** Trial heads: each kind of cut, plain and with all that can be ordered or come about at once. */
export function walks(rules: RouteRules): readonly { readonly name: string; readonly facts: RouteFacts }[] {
  const { rows } = tableOf(rules)
  const everything: WorkId[] = [
    ...rows.flatMap(({ stepId, cells }): WorkId[] =>
      stepId !== 'flow' && cells.some((cell) => cell !== '–') ? [stepId] : [],
    ),
    ...flowOccurrences.map((occurrence): WorkId => `flow-${occurrence}`),
    'valves',
  ]
  return cutKinds.flatMap((kind) =>
    [false, true].map((much) => ({
      name: `${kind === 'none' ? 'no cut' : `a ${cutWords[kind]}`}${much ? ' and everything ordered' : ''}`,
      facts: trial(rules, kind, much, much ? everything : []),
    })),
  )
}

const trial = (rules: RouteRules, kind: CutKind, much: boolean, ordered: readonly WorkId[]): RouteFacts => ({
  source: 'customer',
  used: much,
  cameAssembled: much,
  overheated: much,
  ordered,
  chambers: 4,
  plan: planOf(kind),
  previousPlan: null,
  targetCc,
  classMinCc: null,
  hasEngineData: much,
  camInHead: much,
  manifoldSpansHeads: much,
  remainingPtvIn: null,
  finishAsked: much,
  ...nothingYet,
  settings: { ...defaultRouteSettings, rules },
})
