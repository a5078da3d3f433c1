import { sumOfTallies } from '@/lib/core/chamber/repeatability'
import { queuePlace } from '@/lib/core/route/station-queue'
import type { RouteStep } from '@/lib/core/route/types'
import type { Tx } from '@/lib/data/db'
import { keepRepeats } from '@/lib/data/cc-repeats'
import { openVisitIds } from '@/lib/data/open-visits'
import { stepDetail, type StepDetail } from '@/lib/data/stored/route-step'
import { loadDossier, type Dossier } from './dossier'
import { openRework } from './open-rework'
import { outOfToleranceOf } from './out-of-tolerance'
import { whereaboutsOf } from './whereabouts-of'
import { projectShopCut } from './project-shop-cut'

/** Rewrites the projection (route steps, whereabouts, what the cuts took) from a dossier that has what was changed. */
export async function project(tx: Tx, dossier: Dossier, now: Date): Promise<void> {
  await projectRoute(tx, dossier, now)
  await keepRepeats(
    tx,
    dossier.visit.id,
    dossier.visit.ccRepeats,
    sumOfTallies(dossier.ownRepeats.map(({ tally }) => tally)),
  )
  await projectShopCut(tx, dossier, now)
}

/** Reads the head anew and rewrites its projection; call last in every change of a visit. */
export async function refreshRoute(tx: Tx, visitId: string, now: Date): Promise<Dossier> {
  const dossier = await loadDossier(tx, visitId)
  await project(tx, dossier, now)
  return dossier
}

async function projectRoute(tx: Tx, dossier: Dossier, now: Date): Promise<void> {
  const { visit, facts, route } = dossier
  const at = whereaboutsOf({ visit, facts, route })
  const out = outOfToleranceOf(dossier).map(({ lack }) => lack)
  const rework = openRework(dossier)
  await tx.routeStep.deleteMany({ where: { visitId: visit.id } })
  await tx.routeStep.createMany({
    data: route.map((step, place) => {
      const queue = queuePlace(step, at)
      return { ...routeRow(visit.id, step, place, queue === '' ? {} : { out, rework }), queue }
    }),
  })
  if (visit.place?.whereabouts === at) return
  await tx.visitPlace.upsert({
    where: { visitId: visit.id },
    create: { visitId: visit.id, whereabouts: at, changedAt: now },
    update: { whereabouts: at, changedAt: now },
  })
}

type Odd = Pick<StepDetail, 'out' | 'rework'>

function routeRow(visitId: string, step: RouteStep, place: number, { out = [], rework = [] }: Odd) {
  const { stepId, occurrence, orderId, label, station, state, ...detail } = step
  return {
    visitId,
    stepId,
    occurrence,
    orderKey: orderId ?? '',
    place,
    label,
    station,
    state,
    detail: stepDetail.write({
      ...detail,
      ...(out.length > 0 && { out }),
      ...(rework.length > 0 && { rework }),
    }),
  }
}

/** Refreshes every visit of a pair: a plan change touches them all. */
export async function refreshPair(tx: Tx, pairId: string, now: Date): Promise<void> {
  const visits = await tx.visit.findMany({ where: { pairId }, select: { id: true } })
  for (const visit of visits) await refreshRoute(tx, visit.id, now)
}

/** Refreshes the heads still here that this is true of: for a change that reaches many, such as of a casting record. */
export async function refreshOpenVisits(tx: Tx, where: Parameters<typeof openVisitIds>[1], now: Date): Promise<void> {
  for (const id of await openVisitIds(tx, where)) await refreshRoute(tx, id, now)
}
