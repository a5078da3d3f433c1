import { stationName } from '@/lib/core/route/rules-words'
import { allow, can } from '@/lib/core/access/can'
import type { Actor } from '@/lib/core/access/roles'
import { must } from '@/lib/core/errors'
import { touchOffDepth } from '@/lib/core/at-mill/touch-off'
import type { EffectiveReading } from '@/lib/core/readings/effective'
import type { ExpectedFacts } from '@/lib/core/expected/types'
import { measuredWith } from '@/lib/core/readings/measured-with'
import { readingSpecs } from '@/lib/core/readings/specs'
import type { ReadingKind } from '@/lib/core/readings/types'
import { sameKey } from '@/lib/core/route/keys'
import { isDepth } from '@/lib/core/route/second-check'
import { stepMarks, type StepMark } from '@/lib/core/route/progress'
import type { HeadMark } from '@/lib/core/route/head-marks'
import type { Missing, Owed, RouteStep } from '@/lib/core/route/types'
import type { StepKey } from '@/lib/core/route/step-ids'
import { cornerInsetOf } from '@/lib/core/straightness/corner-inset'
import type { HeadDrawing } from '@/lib/core/spec/head-drawing'
import { db, type Reader } from '@/lib/data/db'
import { instrumentsInUse } from '@/lib/data/instruments'
import { namesOf } from '@/lib/data/people'
import { shopOf } from '@/lib/data/shop'
import { readingConditions } from '@/lib/data/stored/records'
import { loadDossiers, noSuchHead, type Dossier } from '@/lib/dossier/dossier'
import { heldMates, mateCorners, matesIn, type HeldMate } from '@/lib/dossier/of-mates'
import { marksOfHead } from '@/lib/dossier/marks-of-head'
import { whereaboutsOf } from '@/lib/dossier/whereabouts-of'
import { findStep, lastSeq } from '@/lib/dossier/find-step'
import { freeUndoMinutes } from '@/lib/core/route/free-undo'
import { withRepeats } from '@/lib/dossier/step-repeats'
import { outOfToleranceOf } from '@/lib/dossier/out-of-tolerance'
import { expectedFacts } from '@/lib/dossier/expected-facts'
import { fieldsOf, type FieldTarget, type StepField } from '@/lib/dossier/step-fields'
import { wantedTarget } from '@/lib/dossier/wanted-target'
import { finishedCautions, finishedTarget, type FinishedInputs } from '@/lib/dossier/finished-checks'
import { finishedCautionText } from '@/lib/words/finished'
import { lackText } from '@/lib/words/lacks'
import { headAtStep } from './head-at-step'
import { receiveAtStep, type ReceiveAtStep } from './receive-at-step'
import { secondCheckAtStep, type SecondCheckAtStep } from './second-check-at-step'
import { planAtStep, type PlanAtStep } from './plan-at-step'

export type { StepField } from '@/lib/dossier/step-fields'

export type StepScreen = {
  readonly visitId: string
  readonly headId: string
  readonly jobId: string
  readonly tag: string
  readonly jobNumber: string
  readonly casting: string
  readonly promiseOn: string | null
  readonly whereabouts: string
  /** Where it lies; '' where nobody said. */
  readonly rackPlace: string
  readonly locale: string
  /** What the shop calls the station that it waits at now. */
  readonly stationName: string
  readonly timeZone: string
  readonly step: RouteStep
  readonly seen: number
  readonly fields: readonly StepField[]
  /** What the figures of this step are held against; null where none are asked, and at a step that is done. */
  readonly facts: ExpectedFacts | null
  /** What the shop cuts, to be picked from where seat angles are asked. */
  readonly seatAngles: readonly string[]
  readonly plan: PlanAtStep
  /** Nobody has said yet where this shop touches the corners that this step reads. */
  readonly asksForInset: boolean
  /** This head, drawn, where its edges or bolt holes are worked on. */
  readonly drawing: HeadDrawing | null
  /** By kind of reading: those that can measure it, the one used last for it first. */
  readonly instruments: Readonly<Partial<Record<ReadingKind, readonly Instrument[]>>>
  /** Whose choices of units count on this device. */
  readonly personId: string
  /** `at`: ISO 8601. `free`: it can be taken back without a reason still. */
  readonly ticked: { readonly by: string; readonly at: string; readonly free: boolean } | null
  readonly holdReasons: readonly string[]
  /** What was measured on this head and is out of tolerance, not waived: whoever works on it sees it. */
  readonly outOfTolerance: readonly OutLine[]
  readonly matesHeld: readonly HeldMate[]
  /** What is odd about the head, in codes: held, rework, comeback, findings without an answer. */
  readonly marks: readonly HeadMark[]
  /** What the finished figures say beyond the head's own limits. */
  readonly cautions: readonly string[]
  /** Another person looks before this cut; null: nobody has to. */
  readonly secondCheck: SecondCheckAtStep | null
  /** At the arrival check of a head that is still out: what receiving it needs; null elsewhere. */
  readonly receive: ReceiveAtStep | null
  /** What the head's scale shows, and where each step is done. */
  readonly route: readonly StepMark[]
  readonly lastConditions: Readonly<Record<string, string>>
}

export type Instrument = { readonly id: string; readonly name: string; readonly lastCheckedOn: string | null }

/** What is out of tolerance, and the step that measured it: done again there it may come right. */
export type OutLine = { readonly words: string; readonly step: RouteStep }

/** What the screens of all heads have in common. */
export type Bench = {
  readonly client: Reader
  readonly actor: Actor
  readonly now: Date
  readonly shop: Awaited<ReturnType<typeof shopOf>>
  readonly instruments: readonly Picked[]
}

export async function benchOf(client: Reader, actor: Actor, now: Date): Promise<Bench> {
  return { client, actor, now, shop: await shopOf(client), instruments: await instrumentsInUse(client) }
}

/** Everything one screen needs to do one step of one head: plain data, the same after a way as JSON. */
export async function seeStep(actor: Actor, visitId: string, key: StepKey, now: Date): Promise<StepScreen> {
  must(allow(actor, 'job.see'))
  const client = await db()
  const pair = await loadDossiers(client, { pairsOf: [visitId] })
  return stepScreenOf(await benchOf(client, actor, now), pair, visitId, key)
}

/** `loaded`: the head and the others of its pair are among them: a figure is held against theirs. */
export async function stepScreenOf(
  { client, actor, now, shop, instruments }: Bench,
  loaded: readonly Dossier[],
  visitId: string,
  key: StepKey,
): Promise<StepScreen> {
  const dossier = loaded.find(({ visit }) => visit.id === visitId) ?? noSuchHead()
  const mates = matesIn(loaded, dossier)
  const { visit, route, facts, readings } = dossier
  const step = findStep(route, key)
  const last = readings.findLast((reading) => reading.step.stepId === 'flow')
  const plan = await planAtStep(client, dossier, step, mates)
  const inputs = finishedInputs(dossier, mates)
  // No depth is typed before it.
  const secondCheck = await secondCheckAtStep(dossier, step, actor)
  return {
    visitId,
    headId: visit.headId,
    jobId: visit.jobId,
    tag: dossier.label,
    jobNumber: visit.job.number,
    casting: visit.head.casting?.name ?? 'casting not on record',
    promiseOn: visit.job.promiseOn,
    whereabouts: whereaboutsOf(dossier),
    rackPlace: visit.rackPlace,
    locale: shop.locale,
    stationName: stationName(step.station, dossier.today.values.rules),
    timeZone: shop.timeZone,
    step,
    seen: lastSeq(visit, key),
    fields: fieldsOf(
      step,
      [...step.owes, ...offeredAtMill(step, plan, readings)],
      dossier.newest,
      targetsAt(dossier, step, inputs),
    )
      .filter(({ kind }) => secondCheck?.state !== 'needed' || !isDepth(kind))
      .map(withRepeats(dossier, step))
      .map((field) => (can(actor, 'reading.correct') ? field : uncorrected(field))),
    facts: asksForFigures(step)
      ? await expectedFacts(
          client,
          dossier,
          step,
          mates,
          last ? readingConditions.read(last.conditions, last.setId) : {},
        )
      : null,
    seatAngles: dossier.today.values.valveLists.seatAngles,
    plan,
    asksForInset:
      step.owes.some(({ kind }) => kind === 'thickness') &&
      cornerInsetOf(dossier.casting, dossier.settings.cornerInset) === null,
    drawing: headAtStep(dossier, step),
    instruments: instrumentsByKind(step, plan, instruments, readings),
    personId: actor.personId,
    outOfTolerance: outOfToleranceOf(dossier).flatMap(outLine(route)),
    ticked: await tickOf(dossier, step, now),
    holdReasons: facts.openHolds.map((hold) => hold.reason),
    matesHeld: heldMates(dossier),
    marks: marksOfHead(dossier),
    cautions: step.stepId === 'finished' ? finishedCautions(readings, inputs).map(finishedCautionText) : [],
    secondCheck,
    receive: receiveAtStep(dossier, step, actor),
    route: stepMarks(route, facts.openHolds.length > 0),
    lastConditions: last ? readingConditions.read(last.conditions, last.setId) : {},
  }
}

/** Nobody's to correct who only looks. */
const uncorrected = ({ readingId: _reading, ...field }: StepField): StepField => field

const outLine =
  (route: readonly RouteStep[]) =>
  ({ step: at, lack }: Missing): OutLine[] => {
    const step = route.find((one) => sameKey(one, at))
    return step ? [{ words: lackText(lack), step }] : []
  }

const asksForFigures = ({ state, owes }: RouteStep): boolean =>
  state !== 'done' && state !== 'waived' && owes.some(({ kind }) => readingSpecs[kind].form === 'figure')

type Picked = Awaited<ReturnType<typeof instrumentsInUse>>[number]

/** For each kind of figure of the step: those that can measure it, the one used last for it on this head first. */
function instrumentsByKind(
  { owes }: RouteStep,
  plan: PlanAtStep,
  instruments: readonly Picked[],
  readings: Dossier['readings'],
): StepScreen['instruments'] {
  // A chamber that the mill's card wants read is offered there, not owed.
  const asked: readonly ReadingKind[] = [...owes.map(({ kind }) => kind), ...(plan.pass ? (['cc'] as const) : [])]
  const kinds = [...new Set(asked)].filter((kind) => readingSpecs[kind].form === 'figure')
  return Object.fromEntries(
    kinds.map((kind) => {
      const able = measuredWith(kind)
      const used = readings.findLast((reading) => reading.kind === kind && reading.instrumentId !== null)?.instrumentId
      const those = instruments.filter((one) => able.includes(one.kind) || one.kind === 'other')
      return [kind, those.toSorted((a, b) => Number(b.id === used) - Number(a.id === used))]
    }),
  )
}

const finishedInputs = ({ visit, settings }: Dossier, mates: readonly Dossier[]): FinishedInputs => ({
  mates: mateCorners(mates),
  pairThicknessIn: settings.pairThicknessIn,
  finishAsked: visit.job.finishAsked,
})

/** What each field of the step is held against while it is typed. */
function targetsAt(dossier: Dossier, step: RouteStep, inputs: FinishedInputs) {
  const { stepId } = step
  const { visit, settings } = dossier
  const { targetCc, targetText } = visit
  const chamber: FieldTarget | null =
    targetCc === null
      ? null
      : { text: targetText, lowest: targetCc - settings.ccToleranceCc, highest: targetCc + settings.ccToleranceCc }
  return (kind: ReadingKind, point: string): FieldTarget | null => {
    if (kind === 'cc') return stepId === 'finished' || stepId === 'open-chamber' ? chamber : null
    const finished = stepId === 'finished' ? finishedTarget(kind, point, inputs) : null
    return finished ?? wantedTarget(dossier, step, kind, point)
  }
}

async function tickOf({ visit }: Dossier, step: RouteStep, now: Date) {
  const event = visit.events.find((candidate) => candidate.seq === step.doneSeq && candidate.kind === 'tick')
  if (!event) return null
  const names = await namesOf([event.byId])
  const minutes = (now.getTime() - event.at.getTime()) / 60_000
  return { by: names.get(event.byId) ?? '', at: event.at.toISOString(), free: minutes <= freeUndoMinutes }
}

/**
 * Where a proven rate asks for no cc, a pass that stops short is still measured after; the chamber that the card wants read
 * has a cell; once a depth stands, the cutter may be touched off anew.
 */
function offeredAtMill(
  { owes }: RouteStep,
  { pass }: PlanAtStep,
  readings: readonly EffectiveReading[],
): readonly Owed[] {
  if (pass === null) return []
  const owed = owes.find(({ kind }) => kind === 'cc')?.points ?? []
  const wanted = pass.readNext ?? (owed.length === 0 ? 'at-stop' : null)
  const cc = wanted === null || owed.includes(wanted) ? [] : [offered('cc', wanted)]
  return touchOffDepth(readings).seq === null ? cc : [...cc, offered('touch-off', '')]
}

const offered = (kind: ReadingKind, point: string): Owed => ({
  kind,
  label: readingSpecs[kind].label,
  points: [point],
  missing: [],
  optional: true,
})
