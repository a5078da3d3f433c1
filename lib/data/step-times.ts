import 'server-only'
import type { EventKind } from '@/lib/core/route/types'
import type { StepKey } from '@/lib/core/route/step-ids'
import type { Tx } from './db'

type Event = {
  readonly seq: number
  readonly visitId: string
  readonly kind: EventKind
  readonly step: StepKey | null
  readonly orderId: string | null
  readonly at: Date
}

/** What an event ended: a step of the route, a sending, a release; null: nothing that takes time. */
function endedBy({ kind, step, orderId }: Event): { stepId: string; occurrence: string; orderKey: string } | null {
  if (kind === 'tick' && step) return { ...step, orderKey: step.orderId ?? '' }
  if (kind === 'sent') return { stepId: 'send', occurrence: '', orderKey: orderId ?? '' }
  return kind === 'release' ? { stepId: 'release', occurrence: '', orderKey: '' } : null
}

/** Keeps how long it took what this event ended, in one statement; a tick that is taken back counts no more. */
export async function keepStepTime(tx: Tx, event: Event): Promise<void> {
  const { visitId, step, kind, at } = event
  if (kind === 'undo' && step) {
    const { stepId, occurrence, orderId } = step
    await tx.stepTime.deleteMany({ where: { visitId, stepId, occurrence, orderKey: orderId ?? '' } })
    return
  }
  const ended = endedBy(event)
  if (!ended) return
  const { stepId, occurrence, orderKey } = ended
  await tx.$executeRaw`
    INSERT INTO "StepTime" ("visitId", "stepId", "occurrence", "orderKey", "station", "readyAt", "freeAt", "doneAt")
    VALUES (${visitId}, ${stepId}, ${occurrence}, ${orderKey},
      COALESCE((SELECT "station" FROM "RouteStep" WHERE "visitId" = ${visitId} AND "stepId" = ${stepId}
        AND "occurrence" = ${occurrence} AND "orderKey" = ${orderKey}), ''),
      COALESCE((SELECT MAX("at") FROM "VisitEvent" WHERE "visitId" = ${visitId} AND "seq" < ${event.seq}
        AND "kind" IN ('tick', 'sent', 'received', 'release')), (SELECT "createdAt" FROM "Visit" WHERE "id" = ${visitId})),
      (SELECT t."doneAt" FROM "StepTime" t WHERE t."station" = (SELECT "station" FROM "RouteStep"
          WHERE "visitId" = ${visitId} AND "stepId" = ${stepId} AND "occurrence" = ${occurrence}
          AND "orderKey" = ${orderKey})
        AND t."doneAt" <= ${at} AND t."visitId" <> ${visitId} ORDER BY t."doneAt" DESC LIMIT 1),
      ${at})
    ON CONFLICT ("visitId", "stepId", "occurrence", "orderKey") DO UPDATE SET "station" = excluded."station",
      "readyAt" = excluded."readyAt", "freeAt" = excluded."freeAt", "doneAt" = excluded."doneAt"`
}
