import fc from 'fast-check'
import { expect, it } from 'vitest'
import { canTick } from '@/lib/core/route/can-tick'
import { completeness } from '@/lib/core/route/completeness'
import { computeRoute } from '@/lib/core/route/compute-route'
import { keyText, sameKey } from '@/lib/core/route/keys'
import { stepTable } from '@/lib/core/route/steps'
import type { OrderFacts, PlanFacts, RouteFacts, RouteStep, VisitEvent } from '@/lib/core/route/types'
import type { StepKey, WorkId } from '@/lib/core/route/step-ids'
import { inLongRun } from '../../setup/long-run'
import { angle, angleFlat, cleanUp, flat, goodAnswer, noCut, order, plain } from './visit'

const histories = inLongRun ? 1000 : 200
const longStays = inLongRun ? 150 : 60

/**
 * One line of a shop's book: what happened, with its number. A head's facts are read out of the lines, as the shop's log
 * is; the route of the day is what they said when the line was written.
 */
type Line = {
  readonly seq: number
  readonly event?: Omit<VisitEvent, 'seq'>
  readonly readings?: RouteFacts['readings']
  readonly plan?: PlanFacts
  readonly sent?: OrderFacts
  readonly received?: {
    readonly orderId: string
    readonly confirmed: OrderFacts['confirmed']
    readonly seatsIn: boolean
  }
  readonly rejected?: { readonly orderId: string; readonly why: string }
  readonly ordered?: WorkId
  readonly waived?: string
  readonly held?: string
  readonly decided?: true
}

/** The facts as the first lines of the book tell them; nothing is carried over from one line to the next but what they say. */
function factsOf(start: RouteFacts, lines: readonly Line[]): RouteFacts {
  const of = <T>(pick: (line: Line) => T | undefined): T[] => lines.flatMap((line) => pick(line) ?? [])
  const plans = of(({ plan }) => plan)
  const readings = lines.flatMap((line) => line.readings ?? [])
  const newest = new Map(
    readings.map((reading) => [[keyText(reading.step), reading.kind, reading.point].join('/'), reading]),
  )
  const orders = lines.flatMap(({ seq, sent }): OrderFacts[] => {
    if (!sent) return []
    const back = lines.find(({ received }) => received?.orderId === sent.orderId)
    const no = lines.find(({ rejected }) => rejected?.orderId === sent.orderId)
    return [
      {
        ...sent,
        sentSeq: seq,
        receivedSeq: back?.seq ?? null,
        confirmed: back?.received?.confirmed ?? [],
        seatsIn: back?.received?.seatsIn ?? true,
        rejected: no?.rejected ? { seq: no.seq, why: no.rejected.why } : null,
      },
    ]
  })
  const lastDecision = Math.max(0, ...lines.flatMap(({ seq, decided }) => (decided ? [seq] : [])))
  return {
    ...start,
    ordered: [...start.ordered, ...of(({ ordered }) => ordered)],
    plan: plans.at(-1) ?? start.plan,
    previousPlan: plans.at(-2) ?? start.previousPlan,
    events: lines.flatMap(({ seq, event }) => (event ? [{ seq, ...event }] : [])),
    readings: [...newest.values()],
    orders,
    waivedGaps: of(({ waived }) => waived),
    openHolds: lines.flatMap(({ seq, held }) => (held !== undefined && seq > lastDecision ? [{ reason: held }] : [])),
  }
}

type Told = {
  readonly lines: readonly Line[]
  readonly routes: readonly RouteStep[][]
  readonly released: boolean
}

const keyOfStep = ({ stepId, occurrence, orderId }: RouteStep): StepKey => ({ stepId, occurrence, orderId })
const pick = <T>(items: readonly T[], at: number): T | undefined => items[at % Math.max(1, items.length)]

/** Good answers to all that a step owes; now and then a chamber that missed its target, or a seat that leaks. */
function answersTo(step: RouteStep, seq: number, luck: number): RouteFacts['readings'] {
  return step.owes.flatMap(({ kind, missing }) =>
    missing.map((point) => {
      const good = goodAnswer(kind)
      const answer =
        luck % 7 === 0 && kind === 'cc'
          ? 63.2
          : luck % 5 === 0 && kind === 'leak-test' && step.stepId === 'seat-after'
            ? 'leaks'
            : good
      return {
        id: `r${seq}-${kind}-${point}`,
        seq,
        kind,
        point,
        value: typeof answer === 'number' ? answer : null,
        text: String(answer),
        notTaken: null,
        step: keyOfStep(step),
      }
    }),
  )
}

const plans: readonly PlanFacts[] = [
  noCut,
  cleanUp(0.004),
  cleanUp(0.015),
  flat(0.006),
  flat(0.04),
  angle(0.063),
  angleFlat(0.063, 0.02),
]
const orderable: readonly WorkId[] = [
  ...stepTable.flatMap(({ ref, cells }): WorkId[] => (cells.includes('○') ? [ref as WorkId] : [])),
  'valves',
]

type Deed = { readonly what: number; readonly which: number; readonly luck: number }

/** What a deed writes into the book, if it may be done now; undefined: it is refused, and nothing is written. */
function lineOf(
  facts: RouteFacts,
  route: readonly RouteStep[],
  seq: number,
  { what, which, luck }: Deed,
): Line | undefined {
  const here = facts.orders.every(({ receivedSeq }) => receivedSeq !== null)
  const open = route.filter(({ state }) => state !== 'not needed' && state !== 'done' && state !== 'waived')
  const ready = open.filter(({ waitsFor }) => waitsFor.length === 0)
  const step = pick(what < 6 ? (ready.length > 0 ? ready : open) : route, which)
  const at = step && keyOfStep(step)
  // Machinists do most of what happens: a reading or a tick three times in five.
  if (what < 3)
    return step && step.owes.some(({ missing }) => missing.length > 0)
      ? { seq, event: { kind: 'read', step: at ?? null }, readings: answersTo(step, seq, luck) }
      : undefined
  if (what < 9) return at && canTick(facts, at).ok ? { seq, event: { kind: 'tick', step: at } } : undefined
  switch (what) {
    case 9:
      return step && step.doneSeq !== null && step.byVendor === null
        ? { seq, event: { kind: 'undo', step: at ?? null } }
        : undefined
    case 10:
      return { seq, event: { kind: 'plan', step: null }, plan: pick(plans, which) }
    case 11: {
      const scope = [
        ...new Set(open.filter(({ orderId, outside }) => orderId === null && !outside).map(({ stepId }) => stepId)),
      ].filter((id) => ['angle-cut', 'seat-work', 'weld', 'coating', 'guides', 'straighten'].includes(id))
      return here && scope.length > 0
        ? {
            seq,
            event: { kind: 'sent', step: null },
            sent: order(`o${seq}`, scope.slice(0, 1 + (luck % 3)), { angleIn: facts.plan?.angleIn ?? 0 }),
          }
        : undefined
    }
    case 12: {
      const out = facts.orders.find(({ receivedSeq }) => receivedSeq === null)
      return (
        out && {
          seq,
          event: { kind: 'received', step: null },
          received: {
            orderId: out.orderId,
            confirmed: out.scope.filter((_, place) => (luck >> place) % 2 === 0),
            seatsIn: luck % 2 === 0,
          },
        }
      )
    }
    case 13: {
      const back = facts.orders.find(({ receivedSeq, rejected }) => receivedSeq !== null && !rejected)
      return back && luck % 3 === 0
        ? { seq, event: { kind: 'reject', step: null }, rejected: { orderId: back.orderId, why: 'not to size' } }
        : undefined
    }
    case 14:
      return { seq, ordered: pick(orderable, which) }
    case 15: {
      const gap = pick(
        completeness(facts).filter((missing) => missing.what !== 'hold' && missing.what !== 'finding'),
        which,
      )
      if (!gap || luck % 2 === 0) return undefined
      return gap.what === 'step'
        ? { seq, event: { kind: 'waive', step: gap.step }, waived: gap.gap }
        : { seq, waived: gap.gap }
    }
    case 16:
      return luck % 4 === 0 ? { seq, held: 'a crack was seen' } : undefined
    default:
      return facts.openHolds.length > 0 ? { seq, decided: true } : undefined
  }
}

/** Lets things happen one after the other, and writes down the route after each; released as soon as nothing is missing. */
function tell(start: RouteFacts, deeds: readonly Deed[]): Told {
  const lines: Line[] = []
  const routes: RouteStep[][] = []
  for (const deed of deeds) {
    const facts = factsOf(start, lines)
    const route = computeRoute(facts)
    if (lines.length > 0 && completeness(facts).length === 0) return { lines, routes, released: true }
    const line = lineOf(facts, route, lines.length + 1, deed)
    if (!line) continue
    lines.push(line)
    routes.push(computeRoute(factsOf(start, lines)))
  }
  return { lines, routes, released: false }
}

const start: fc.Arbitrary<RouteFacts> = fc
  .record({
    used: fc.boolean(),
    cameAssembled: fc.boolean(),
    ordered: fc.subarray([...orderable], { maxLength: 5 }),
    chambers: fc.integer({ min: 1, max: 4 }),
    targetCc: fc.constantFrom(null, 60),
    camInHead: fc.constantFrom(null, true),
    manifoldSpansHeads: fc.constantFrom(null, true, false),
  })
  .map((facts) => ({ ...plain, ...facts }))

const deeds = (least: number, most: number): fc.Arbitrary<Deed[]> =>
  fc.array(fc.record({ what: fc.nat({ max: 17 }), which: fc.nat({ max: 60 }), luck: fc.nat({ max: 255 }) }), {
    minLength: least,
    maxLength: most,
  })

it(
  'is the same from the facts as it was step by step, over many histories, and nothing done is lost',
  { timeout: 300_000 },
  () => {
    let ticks = 0
    let again = 0
    fc.assert(
      fc.property(start, deeds(30, 65), (facts, done) => {
        const { lines, routes } = tell(facts, done)
        routes.forEach((route, place) => {
          // What is on record up to here, in whatever order it is handed over, gives the route of that day.
          const known = factsOf(facts, lines.slice(0, place + 1))
          expect(
            computeRoute({ ...known, events: known.events.toReversed(), readings: known.readings.toReversed() }),
          ).toEqual(route)
        })
        const last = factsOf(facts, lines)
        const route = computeRoute(last)
        for (const event of last.events) {
          if (event.kind !== 'tick' || !event.step) continue
          const key = event.step
          const later = last.events.some(
            ({ seq, kind, step }) => seq > event.seq && kind === 'undo' && step !== null && sameKey(step, key),
          )
          const found = route.find((step) => sameKey(step, key))
          ticks += 1
          if (found?.state === 'do again') again += 1
          if (!later) expect(found, `${keyText(key)} was ticked and is gone`).toBeDefined()
        }
      }),
      { numRuns: histories },
    )
    // The histories must be worth something: steps were ticked, and some of them undone by what came later.
    expect(ticks).toBeGreaterThan(histories)
    expect(again).toBeGreaterThan(histories / 50)
  },
)

/** A head that was let go, looked at by itself: each step of its route done or waived, each answer there, nothing held. */
function isWhole(facts: RouteFacts): void {
  for (const step of computeRoute(facts)) {
    if (step.stepId === 'hand-over' || step.state === 'not needed') continue
    expect(['done', 'waived'], `${step.label} is ${step.state}`).toContain(step.state)
    if (step.state === 'done') expect(step.owes.flatMap(({ missing }) => missing)).toEqual([])
  }
  expect(facts.openHolds).toEqual([])
  expect(facts.orders.filter(({ receivedSeq }) => receivedSeq === null)).toEqual([])
}

it('is never released incomplete, however it came there', { timeout: 300_000 }, () => {
  let released = 0
  // Long stays of heads with little to do, so that many of them come to their end.
  const few = start.map((facts) => ({ ...facts, ordered: facts.ordered.slice(0, 2), plan: facts.used ? null : noCut }))
  fc.assert(
    fc.property(few, deeds(20, 40), deeds(90, 110), (facts, first, rest) => {
      // Then the shop settles down: what is open is done, what is out comes back, a hold is decided.
      const calm = rest.map((deed) => ({ ...deed, what: pick([0, 1, 2, 3, 4, 5, 6, 12, 17], deed.what) ?? 0 }))
      const told = tell(facts, [...first, ...calm])
      if (!told.released) return
      released += 1
      isWhole(factsOf(facts, told.lines))
    }),
    { numRuns: longStays },
  )
  expect(released).toBeGreaterThan(longStays / 8)
})
