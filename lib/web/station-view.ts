import type { Actor } from '@/lib/core/access/roles'
import { keyIn, keyText } from '@/lib/core/route/keys'
import type { Station, StepKey } from '@/lib/core/route/step-ids'
import { buildId } from '@/lib/data/build-id'
import { seeFlowStep, type FlowStepView } from '@/lib/use-cases/flow/see-flow-step'
import { seeVisitPhotos, type Shown } from '@/lib/use-cases/photos/see-photos'
import { newestChange } from '@/lib/use-cases/shop/newest-change'
import { seeLeftStep, type LeftStep } from '@/lib/use-cases/stations/see-left-step'
import { seeQueue, type Queue } from '@/lib/use-cases/stations/see-queue'
import { orGone, seeStation } from '@/lib/use-cases/stations/see-station'
import { seeStep, type StepScreen } from '@/lib/use-cases/stations/see-step'

/** One step of one head as a tablet shows and keeps it: plain data, the same after a way as JSON. */
export type StepAnswer =
  | { readonly is: 'on-route'; readonly screen: StepScreen; readonly flow: FlowStepView | null; readonly photos: Shown }
  | { readonly is: 'left'; readonly left: LeftStep }

export type KeptStep = { readonly visitId: string; readonly key: StepKey; readonly answer: StepAnswer }

export type StationView = {
  /** Number of the newest change that this shows. */
  readonly newest: number
  /** ISO 8601, by the shop's clock. */
  readonly at: string
  /** Which build of the app says so. */
  readonly build: string
  readonly queue: Queue
  readonly steps: readonly KeptStep[]
}

/** A station's queue as it comes with the page itself; its steps are told to the station app. */
export type FirstQueue = Pick<StationView, 'newest' | 'at' | 'queue'> & { readonly station: Station }

export async function firstQueue(actor: Actor, station: Station, now: Date): Promise<FirstQueue> {
  // Read first: what changes while the queue is read is told again, not left out.
  const newest = await newestChange()
  const queue = await seeQueue(actor, station, 1, now)
  return { station, newest, at: now.toISOString(), queue }
}

/** Which build of the app this is. */
export { buildId }

/** `since`: the newest change that the tablet knows; the steps that no change since then touches are left out. */
export async function stationView(
  actor: Actor,
  station: Station,
  since: number | null,
  now: Date,
): Promise<StationView> {
  const { newest, queue, screens } = await seeStation(actor, station, since, now)
  const steps: KeptStep[] = []
  for (const screen of screens) {
    const key = keyIn(screen.step)
    steps.push({ visitId: screen.visitId, key, answer: await withRest(actor, screen, key, now) })
  }
  return { newest, at: now.toISOString(), build: buildId(), queue, steps }
}

export type StepView = Pick<StationView, 'newest' | 'at' | 'build'> & { readonly answer: StepAnswer }

/** One step, wherever it stands on the route of its head, or that it is not there. */
export async function stepView(
  actor: Actor,
  station: Station,
  at: { readonly visitId: string; readonly key: StepKey },
  now: Date,
): Promise<StepView> {
  const newest = await newestChange()
  const screen = await seeStep(actor, at.visitId, at.key, now).catch(orGone)
  const answer: StepAnswer = screen
    ? await withRest(actor, screen, at.key, now)
    : { is: 'left', left: await seeLeftStep(actor, at.visitId, at.key, station) }
  return { newest, at: now.toISOString(), build: buildId(), answer }
}

async function withRest(actor: Actor, screen: StepScreen, key: StepKey, now: Date): Promise<StepAnswer> {
  const shown = await seeVisitPhotos(actor, screen.visitId, now)
  const photos = { ...shown, photos: shown.photos.filter((photo) => keyText(photo as StepKey) === keyText(key)) }
  const flow = key.stepId === 'flow' ? await seeFlowStep(actor, screen.visitId, key) : null
  return { is: 'on-route', screen, flow, photos }
}
