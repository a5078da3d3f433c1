import type { Actor } from '@/lib/core/access/roles'
import type { ReadingKind } from '@/lib/core/readings/types'
import { refOf, type StepRef } from '@/lib/core/route/keys'
import { stepTable } from '@/lib/core/route/steps'
import type { RouteStep } from '@/lib/core/route/types'
import type { Station } from '@/lib/core/route/step-ids'
import { entrySchema, type Entry } from '@/lib/schemas/visit'
import { lastSeq } from '@/lib/dossier/find-step'
import { recordReadings } from '@/lib/use-cases/visits/record-readings'
import { startStep } from '@/lib/use-cases/visits/start-step'
import { tickStep, type Ticked } from '@/lib/use-cases/visits/tick-step'
import { alsoAnswered, filledAlike, flowConditions, usualAnswers } from './answers'
import { findVisit, type Found } from './found'
import { twice } from './twice'

/** Who does the work at each station, with what, and when. */
export type Hands = {
  readonly at: (station: Station) => Actor
  /** Ids by kind of reading; a kind that is not named is read with nothing in particular. */
  readonly instruments?: Readonly<Partial<Record<ReadingKind, string>>>
  /** The time at which a step of that station is done; called once a change. */
  readonly time: (station: Station) => Date
  /** Takes the photo that check-in asks for; left out: nobody has a camera. */
  readonly camera?: (head: Found, by: Actor) => Promise<void>
}

/** An answer as it is typed, or why there is none. */
export type Given = string | { readonly notTaken: string }
/** By kind; by point where there are several. What is not given is answered by the table. */
export type Readings = Readonly<Partial<Record<ReadingKind, Given | Readonly<Record<string, Given>>>>>

/** One person who does everything at one moment: enough for most tests. */
export const oneHand = (actor: Actor, now: Date): Hands => ({ at: () => actor, time: () => now })

const settled = (step: RouteStep): boolean =>
  step.state === 'done' || step.state === 'waived' || step.state === 'not needed'

/** The step of this name that is still open; an arrival is that of the first order which has one open. */
function openStep({ route, tag }: Found, ref: StepRef): RouteStep {
  const step = route.find((candidate) => refOf(candidate) === ref && !settled(candidate))
  if (!step) throw new Error(`${ref} is not open on the route of ${tag}.`)
  return step
}

function givenAt(readings: Readings, kind: ReadingKind, point: string): Given | undefined {
  const given = readings[kind]
  if (given === undefined || typeof given === 'string' || 'notTaken' in given) return given as Given | undefined
  return given[point]
}

/** Everything the step still owes, from what is given, the rest from the table. */
function entryOf(head: Found, step: RouteStep, readings: Readings, { instruments = {} }: Hands, all: boolean): Entry {
  const entries = step.owes.flatMap(({ kind, points, missing, optional }) => {
    const wanted = optional ? (alsoAnswered.includes(kind) ? points : []) : missing
    const asked = points.filter(
      (point) => givenAt(readings, kind, point) !== undefined || (all && wanted.includes(point)),
    )
    return asked.map((point) => {
      const given = givenAt(readings, kind, point) ?? usualAnswers[kind](head, { step, kind, point })
      return typeof given === 'string'
        ? {
            kind,
            point,
            text: given,
            notTaken: null,
            ...(kind === 'cc' ? { repeat: 'again' } : {}),
            ...(filledAlike.includes(kind) ? { filled: true } : {}),
          }
        : { kind, point, text: '', notTaken: given.notTaken }
    })
  })
  const first = entries.map((entry) => instruments[entry.kind]).find((id) => id !== undefined)
  return entrySchema.parse({
    readings: entries,
    instrumentId: first ?? null,
    conditions: step.stepId === 'flow' ? flowConditions(head) : {},
    takenAt: null,
  })
}

const seenStep = (head: Found, step: RouteStep) => {
  const { stepId, occurrence, orderId } = step
  const key = { stepId, occurrence, orderId }
  return { visitId: head.visit.id, step: key, seen: lastSeq(head.visit, key) }
}

/** Ticks a step, answering all it owes. */
export async function tick(hands: Hands, visitId: string, ref: StepRef, readings: Readings = {}): Promise<Ticked> {
  return tickFound(hands, await findVisit(visitId), ref, readings)
}

async function tickFound(hands: Hands, head: Found, ref: StepRef, readings: Readings): Promise<Ticked> {
  const step = openStep(head, ref)
  if (step.waitsFor.some((wait) => wait.code === 'step' && wait.step.stepId === 'rinse')) {
    await tickFound(hands, head, 'rinse', {})
    return tickFound(hands, await findVisit(head.visit.id), ref, readings)
  }
  const asked = step.owes.some(({ kind, missing }) => kind === 'photo' && missing.length > 0)
  if (hands.camera && asked && readings.photo === undefined) {
    await hands.camera(head, hands.at(step.station))
    return tickFound(hands, await findVisit(head.visit.id), ref, readings)
  }
  const entry = entryOf(head, step, readings, hands, true)
  const moment = { now: hands.time(step.station) }
  return twice(entry, (typed) => tickStep(hands.at(step.station), { ...seenStep(head, step), entry: typed }, moment))
}

/** Records just these readings at a step, and does not tick it. */
export async function read(hands: Hands, visitId: string, ref: StepRef, readings: Readings): Promise<void> {
  const head = await findVisit(visitId)
  const step = openStep(head, ref)
  const entry = entryOf(head, step, readings, hands, false)
  const moment = { now: hands.time(step.station) }
  await twice(entry, (typed) =>
    recordReadings(hands.at(step.station), { ...seenStep(head, step), entry: typed }, moment),
  )
}

/** Says that somebody is at it. */
export async function begin(hands: Hands, visitId: string, ref: StepRef): Promise<void> {
  const head = await findVisit(visitId)
  const step = openStep(head, ref)
  await startStep(hands.at(step.station), seenStep(head, step), { now: hands.time(step.station) })
}

export const checkIn = (hands: Hands, visitId: string, readings: Readings = {}): Promise<Ticked> =>
  tick(hands, visitId, 'check-in', readings)

const seatWork: readonly StepRef[] = ['seat-work', 'blend']

/** The order of the table, but seats are worked before they are checked: the check would be undone. */
const workingOrder: readonly StepRef[] = stepTable.flatMap(({ ref }) => {
  if (seatWork.includes(ref)) return []
  return ref === 'seat-after' ? [...seatWork, ref] : [ref]
})
const placeOf = (step: RouteStep): number => workingOrder.indexOf(refOf(step))

/** What comes next on the way to a step: the first in working order that waits for nothing, else the first. */
function nextBefore({ route }: Found, ref: StepRef): RouteStep | null {
  const end = workingOrder.indexOf(ref)
  const before = route.filter((step) => !settled(step) && placeOf(step) < end).sort((a, b) => placeOf(a) - placeOf(b))
  return before.find((step) => step.waitsFor.length === 0) ?? before[0] ?? null
}

/** Answers by step, for what is to be read otherwise than usual on the way. */
export type OnTheWay = Readonly<Partial<Record<StepRef, Readings>>>

/** Does everything that comes before a step; the step itself is left as it is. */
export async function driveTo(hands: Hands, visitId: string, ref: StepRef, onTheWay: OnTheWay = {}): Promise<void> {
  const most = 2 * stepTable.length // a route that goes round in circles is a fault to see
  for (let count = 0; count < most; count += 1) {
    const head = await findVisit(visitId)
    const next = nextBefore(head, ref)
    if (!next) return
    await tickFound(hands, head, refOf(next), onTheWay[refOf(next)] ?? {})
  }
  throw new Error(`${ref} was not reached.`)
}

/** Does everything up to a step, and the step. */
export async function driveThrough(
  hands: Hands,
  visitId: string,
  ref: StepRef,
  onTheWay: OnTheWay = {},
): Promise<void> {
  await driveTo(hands, visitId, ref, onTheWay)
  await tick(hands, visitId, ref, onTheWay[ref] ?? {})
}
