import { allow } from '@/lib/core/access/can'
import type { Action } from '@/lib/core/access/table'
import { awayWords } from '@/lib/core/route/can-tick'
import { awayOn } from '@/lib/core/route/compute-route'
import type { RouteFacts, RouteStep } from '@/lib/core/route/types'
import type { Station, StepKey } from '@/lib/core/route/step-ids'
import { must, RefusedError, type Theirs, type TheirVerb } from '@/lib/core/errors'
import { nameOf } from '@/lib/data/people'
import { bumpVisit } from '@/lib/data/visits'
import { loadDossier, type Dossier } from '@/lib/dossier/dossier'
import type { Write } from '@/lib/data/write'
import { theirsText } from '@/lib/words/conflicts'
import { findStep, lastSeq } from '@/lib/dossier/find-step'
import { refuseOnOrder, refuseReleased } from '@/lib/dossier/refuse-closed'

type SeenStep = { readonly visitId: string; readonly step: StepKey; readonly seen: number }

const eventVerbs: Readonly<Record<string, TheirVerb>> = {
  tick: 'tick',
  undo: 'undo',
  read: 'read',
  start: 'start',
  waive: 'waive',
}

/**
 * What every change at a step begins with: the visit and its route, permission for the step's station, nothing changed
 * at this step since the person looked, and the visit's lock taken.
 */
export async function loadStepForChange(
  ctx: Write,
  input: SeenStep,
  actionFor: (station: Station) => Action,
): Promise<Dossier & { readonly step: RouteStep }> {
  const found = await loadDossier(ctx.tx, input.visitId)
  const step = findStep(found.route, input.step)
  must(allow(ctx.actor, actionFor(step.station)))
  refuseReleased(found.visit)
  refuseOnOrder(found.visit)
  await refuseChanged(ctx, found, input)
  await bumpVisit(ctx.tx, found.visit)
  return { ...found, step }
}

/** Nobody can begin with a head that a vendor has. */
export function refuseAway(facts: RouteFacts): void {
  const away = awayOn(facts)
  if (away) throw new RefusedError({ code: 'wrong-state', message: awayWords(away) })
}

async function refuseChanged(ctx: Write, { visit }: Dossier, input: SeenStep): Promise<void> {
  const last = lastSeq(visit, input.step)
  if (last <= input.seen) return
  const event = visit.events.find((candidate) => candidate.seq === last)
  const theirs: Theirs = {
    who: event ? await nameOf(ctx.tx, event.byId) : '',
    verb: (event && eventVerbs[event.kind]) ?? 'change',
    at: event?.at.toISOString() ?? '',
    seen: last,
  }
  throw new RefusedError({
    code: 'conflict',
    message: `${theirsText(theirs)} while you were working. Nothing you entered is lost. Choose which to keep.`,
    theirs,
  })
}
