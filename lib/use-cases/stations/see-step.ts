import { stationName } from '@/lib/core/route/rules-words'
import { allow } from '@/lib/core/access/can'
import type { Actor } from '@/lib/core/access/roles'
import { must } from '@/lib/core/errors'
import { readingSpecs } from '@/lib/core/readings/specs'
import type { ReadingKind } from '@/lib/core/readings/types'
import type { Owed, RouteStep } from '@/lib/core/route/types'
import type { StepKey } from '@/lib/core/route/step-ids'
import type { HeadDrawing } from '@/lib/core/spec/head-drawing'
import { headLabel } from '@/lib/core/shop/tag-number'
import { db } from '@/lib/data/db'
import { effectiveReadings } from '@/lib/data/facts'
import { heldInPairs, matesHeld, type HeldHead } from '@/lib/data/held-mates'
import { mateCorners } from '@/lib/data/mate-corners'
import { namesOf } from '@/lib/data/people'
import { currentRules, settingsOfVisits } from '@/lib/data/settings'
import { shopOf } from '@/lib/data/shop'
import { visitWithRoute, whereaboutsOf, type VisitWithRoute } from '@/lib/data/visits'
import { findStep, lastSeq } from '@/lib/dossier/find-step'
import { freeUndoMinutes } from '@/lib/core/route/free-undo'
import { fieldsOf, type FieldTarget, type StepField } from '@/lib/dossier/step-fields'
import { finishedCautions, finishedTarget } from '@/lib/dossier/finished-checks'
import { headAtStep } from './head-at-step'
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
  readonly locale: string
  /** What the shop calls the station that it waits at now. */
  readonly stationName: string
  readonly timeZone: string
  readonly step: RouteStep
  readonly seen: number
  readonly fields: readonly StepField[]
  readonly plan: PlanAtStep
  /** This head, drawn, where its edges or bolt holes are worked on. */
  readonly drawing: HeadDrawing | null
  readonly instruments: readonly {
    readonly id: string
    readonly name: string
    readonly lastCheckedOn: string | null
  }[]
  readonly ticked: { readonly by: string; readonly at: Date; readonly free: boolean } | null
  /** Other steps of this head at the same station. */
  readonly others: readonly RouteStep[]
  readonly holdReasons: readonly string[]
  readonly matesHeld: readonly HeldHead[]
  /** What the finished figures say beyond the head's own limits. */
  readonly cautions: readonly string[]
  readonly route: readonly RouteStep[]
  readonly lastConditions: Readonly<Record<string, string>>
}

/** Everything one screen needs to do one step of one head. */
export async function seeStep(actor: Actor, visitId: string, key: StepKey, now: Date): Promise<StepScreen> {
  must(allow(actor, 'job.see'))
  const client = await db()
  const found = await visitWithRoute(client, visitId)
  const { visit, route, facts } = found
  const step = findStep(route, key)
  const readings = effectiveReadings(visit.readings)
  const settings = (await settingsOfVisits(client, [visit]))(visit)
  const shop = await shopOf(client)
  const instruments = await client.instrument.findMany({
    where: { retiredAt: null },
    orderBy: { name: 'asc' },
  })
  const last = readings.findLast((reading) => reading.step.stepId === 'flow')
  const plan = await planAtStep(client, found, step, settings)
  const ground = {
    mates: step.stepId === 'finished' ? await mateCorners(client, visit) : [],
    pairThicknessIn: settings.pairThicknessIn,
    finishAsked: visit.job.finishAsked,
  }
  const cc = visit.targetCc
  const chamber: FieldTarget | null =
    cc === null
      ? null
      : { text: visit.targetText, lowest: cc - settings.ccToleranceCc, highest: cc + settings.ccToleranceCc }
  const targetOf = (kind: ReadingKind, point: string): FieldTarget | null => {
    if (kind === 'cc') return ['finished', 'open-chamber'].includes(step.stepId) ? chamber : null
    return step.stepId === 'finished' ? finishedTarget(kind, point, ground) : null
  }
  return {
    visitId,
    headId: visit.headId,
    jobId: visit.jobId,
    tag: headLabel(visit),
    jobNumber: visit.job.number,
    casting: visit.head.casting?.name ?? 'casting not on record',
    promiseOn: visit.job.promiseOn,
    whereabouts: whereaboutsOf(visit, facts, route),
    locale: shop.locale,
    stationName: stationName(step.station, await currentRules(client)),
    timeZone: shop.timeZone,
    step,
    seen: lastSeq(visit, key),
    fields: fieldsOf(step, [...step.owes, ...offeredAtMill(step, plan)], readings, targetOf),
    plan,
    drawing: headAtStep(found, step, readings),
    instruments: instruments.map(({ id, name, lastCheckedOn }) => ({ id, name, lastCheckedOn })),
    ticked: await tickOf(found, step, now),
    others: route.filter((other) => other.station === step.station && other !== step && other.state !== 'not needed'),
    holdReasons: facts.openHolds.map((hold) => hold.reason),
    matesHeld: matesHeld(await heldInPairs(client, [visit.pairId]), visit),
    cautions: step.stepId === 'finished' ? finishedCautions(readings, ground) : [],
    route,
    lastConditions: last ? (JSON.parse(last.conditions) as Record<string, string>) : {},
  }
}

async function tickOf({ visit }: VisitWithRoute, step: RouteStep, now: Date) {
  const event = visit.events.find((candidate) => candidate.seq === step.doneSeq && candidate.kind === 'tick')
  if (!event) return null
  const names = await namesOf([event.byId])
  const minutes = (now.getTime() - event.at.getTime()) / 60_000
  return { by: names.get(event.byId) ?? '', at: event.at, free: minutes <= freeUndoMinutes }
}

/** Where a proven rate asks for no cc, a pass that stops short is still measured after. */
const offeredAtMill = ({ owes }: RouteStep, { pass }: PlanAtStep): readonly Owed[] =>
  pass === null || owes.some((owed) => owed.kind === 'cc')
    ? []
    : [{ kind: 'cc', label: readingSpecs.cc.label, points: ['at-stop'], missing: [], optional: true }]
