import { allow } from '@/lib/core/access/can'
import type { Action } from '@/lib/core/access/table'
import { awayOn } from '@/lib/core/route/compute-route'
import type { RouteFacts, RouteStep } from '@/lib/core/route/types'
import type { Station, StepKey } from '@/lib/core/route/step-ids'
import { must, RefusedError, type Theirs, type TheirVerb } from '@/lib/core/errors'
import { nameOf } from '@/lib/data/people'
import { bumpVisit } from '@/lib/data/visits'
import { loadDossier, type Dossier } from '@/lib/dossier/dossier'
import type { Write } from '@/lib/data/write'
import { theirsText } from '@/lib/words/conflicts'
import { awayText } from '@/lib/words/ticks'
import type { Entry } from '@/lib/dossier/add-readings'
import { repeatedEvents } from '@/lib/dossier/already-read'
import { findStep, isAt, lastSeq } from '@/lib/dossier/find-step'
import { refuseOnOrder, refuseReleased } from '@/lib/dossier/refuse-closed'

type SeenStep = {
  readonly visitId: string
  readonly step: StepKey
  readonly seen: number
  readonly since?: number | undefined
  readonly entry?: Entry | null
}

type Event = Dossier['visit']['events'][number]

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
  if (away) throw new RefusedError({ code: 'wrong-state', message: awayText(away) })
}

/** Whether all that was read with this event is that there is a photo. */
const isPhotoAlone = ({ readings }: Dossier['visit'], seq: number): boolean =>
  readings.some(
    ({ eventSeq, points }) => eventSeq === seq && points.length > 0 && points.every(({ kind }) => kind === 'photo'),
  )

/**
 * Refused when somebody did something at this step that the page does not show. What this person did there themself, and
 * of which the answer was lost, is no such thing: that they began, their photo, and readings that are sent once more.
 */
async function refuseChanged(ctx: Write, { visit }: Dossier, input: SeenStep): Promise<void> {
  const { step, seen, entry } = input
  const { personId } = ctx.actor
  const again = entry ? repeatedEvents(visit, { personId, step, seen, entry }) : []
  const isOwn = ({ seq, kind, byId }: Event) =>
    again.includes(seq) || (byId === personId && (kind === 'start' || isPhotoAlone(visit, seq)))
  const event = visit.events.findLast((one) => one.seq > seen && isAt(one, step) && !isOwn(one))
  if (!event) return
  const theirs: Theirs = {
    who: await nameOf(ctx.tx, event.byId),
    verb: eventVerbs[event.kind] ?? 'change',
    at: event.at.toISOString(),
    seen: lastSeq(visit, step),
    since: input.since ?? seen,
  }
  throw new RefusedError({
    code: 'conflict',
    message: `${theirsText(theirs)} while you were working. Nothing you entered is lost. Choose which to keep.`,
    theirs,
  })
}
