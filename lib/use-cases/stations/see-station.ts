import { allow } from '@/lib/core/access/can'
import type { Actor } from '@/lib/core/access/roles'
import { must, RefusedError } from '@/lib/core/errors'
import type { Station } from '@/lib/core/route/step-ids'
import { newestChange, visitsChangedSince } from '@/lib/data/changes'
import { db } from '@/lib/data/db'
import { loadDossiers } from '@/lib/dossier/dossier'
import { seeQueue, type Queue } from './see-queue'
import { benchOf, stepScreenOf, type StepScreen } from './see-step'

/** A station as it is now. */
export type StationNow = {
  /** Number of the newest change that this shows. */
  readonly newest: number
  readonly queue: Queue
  /** Those ready and started here; with `since`, of them only those that may be another now. */
  readonly screens: readonly StepScreen[]
}

/** The queue of a station and the screen of each step that is ready or started there. `since`: the newest change known. */
export async function seeStation(actor: Actor, station: Station, since: number | null, now: Date): Promise<StationNow> {
  must(allow(actor, 'job.see'))
  const client = await db()
  // Read first: what changes while the rest is read is told again, not left out.
  const newest = await newestChange()
  const queue = await seeQueue(actor, station, 1, now)
  const changed = since === null ? null : await visitsChangedSince(client, since)
  const lines = [...queue.ready, ...queue.started].filter(({ visitId }) => changed?.has(visitId) ?? true)
  const loaded = await loadDossiers(client, { pairsOf: lines.map(({ visitId }) => visitId) })
  const bench = await benchOf(client, actor, now)
  const screens: StepScreen[] = []
  for (const { visitId, step } of lines) {
    const screen = await stepScreenOf(bench, loaded, visitId, step).catch(orGone)
    if (screen) screens.push(screen)
  }
  return { newest, queue, screens }
}

/** Null where the route does not have the step. */
export function orGone(error: unknown): null {
  if (error instanceof RefusedError && error.refusal.code === 'not-on-route') return null
  throw error
}
