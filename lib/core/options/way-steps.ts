import { flatDeckFactsOf } from '../flat-deck/past-maker'
import { computeRoute } from '../route/compute-route'
import { keyText } from '../route/keys'
import { nothingYet } from '../route/nothing-yet'
import type { PlanFacts, RouteFacts, RouteStep } from '../route/types'
import type { WorkId } from '../route/step-ids'
import { mostGoneIn } from '../head-now/gone'
import type { PlanRecord } from '../cut/plan-record'
import type { BenchQuestion, Start, WayKind, WayStep } from './bench-types'
import { headsOnDeck } from './heads-on-deck'

/**
 * The steps a way makes necessary, in working order: those of the route with it, less those of the same head left as it
 * is. The same tables make the route of the job that may come of it.
 */
export function wayStepsOf(
  question: BenchQuestion,
  start: Start,
  kind: WayKind,
  record: PlanRecord | null,
): readonly WayStep[] {
  const known = stepsAnyway(question, start)
  const plan = record && record.kind !== 'none' ? planFacts(record, start) : null
  const opens = kind === 'open' || kind === 'equalise'
  const after = routeOf(question, start, plan, opens ? ['open-chamber'] : [])
  return needed(after)
    .filter((step) => !known.has(keyText(step)))
    .map((step) => ({
      stepId: step.stepId,
      label: step.label,
      outside: step.station === 'outside',
    }))
}

/** Worked out once for all the ways of one starting head. */
const worked = new WeakMap<BenchQuestion, Map<Start, ReadonlySet<string>>>()

function stepsAnyway(question: BenchQuestion, start: Start): ReadonlySet<string> {
  const ofQuestion = worked.get(question) ?? new Map<Start, ReadonlySet<string>>()
  worked.set(question, ofQuestion)
  const known = ofQuestion.get(start) ?? new Set(needed(routeOf(question, start, null, [])).map(keyText))
  ofQuestion.set(start, known)
  return known
}

const needed = (route: readonly RouteStep[]): RouteStep[] => route.filter((step) => step.state !== 'not needed')

function routeOf(
  question: BenchQuestion,
  start: Start,
  plan: PlanFacts | null,
  ordered: readonly WorkId[],
): RouteStep[] {
  const { engine, shop } = question
  const facts: RouteFacts = {
    source: start.supply === 'own' ? 'customer' : start.cutByMaker ? 'bought-cut' : 'bought',
    used: start.used,
    cameAssembled: false,
    overheated: false,
    ordered,
    chambers: start.chambers,
    flatDeck: start.flatDeck ? flatDeckFactsOf(start.casting, start.chambers) : null,
    plan: plan ?? uncut,
    previousPlan: null,
    targetCc: start.flatDeck ? null : question.targetCc,
    classMinCc: start.flatDeck ? null : question.classMinCc,
    hasEngineData: engine.boreIn !== undefined,
    camInHead: engine.camInHead,
    manifoldSpansHeads: engine.layout === 'unknown' ? null : engine.layout === 'v',
    remainingPtvIn: smaller(engine.intakePtvIn, engine.exhaustPtvIn),
    finishAsked: false,
    ...nothingYet,
    settings: shop.settings,
  }
  return computeRoute(facts)
}

function planFacts(record: PlanRecord, { rateProven, heads, casting }: Start): PlanFacts {
  const after = headsOnDeck(heads, casting, record, record.deepEdge).map((head) => head.after && mostGoneIn(head.after))
  return {
    kind: record.kind,
    flatIn: record.flatIn,
    angleIn: record.angleIn,
    angleDeg: record.angleDeg ?? 0,
    deepestIn: record.deepestIn,
    totalRemovedIn: after.includes(null) ? null : Math.max(0, ...after.map(Number)),
    intakeSideIn: record.intakeSideIn,
    ptvLossIn: larger(record.ptvLossIntakeIn, record.ptvLossExhaustIn),
    rateProven,
  }
}

const uncut: PlanFacts = {
  kind: 'none',
  flatIn: 0,
  angleIn: 0,
  angleDeg: 0,
  deepestIn: 0,
  totalRemovedIn: null,
  intakeSideIn: null,
  ptvLossIn: null,
}

const smaller = (a: number | undefined, b: number | undefined): number | null =>
  a === undefined && b === undefined ? null : Math.min(a ?? Infinity, b ?? Infinity)
const larger = (a: number | null, b: number | null): number | null =>
  a === null && b === null ? null : Math.max(a ?? -Infinity, b ?? -Infinity)
