import { RefusedError } from '@/lib/core/errors'
import { onOrderText } from '@/lib/words/ticks'
import type { VisitRecord } from '@/lib/data/visit-records'
import { isOnOrder } from './route-facts'

/** A head that has left takes no more work; a correction is still possible, and makes a new revision. */
export function refuseClosed(visit: VisitRecord): void {
  const left = visit.handOver ?? visit.returned ?? visit.scrappedAt ?? visit.takenOffAt
  if (left)
    throw new RefusedError({
      code: 'wrong-state',
      message: 'This head has left the shop. Book a new job to work on it.',
    })
}

/** What has not come cannot be looked at, measured or stopped. */
export function refuseOnOrder(visit: VisitRecord): void {
  if (isOnOrder(visit)) throw new RefusedError({ code: 'wrong-state', message: onOrderText })
}

export function refuseReleased(visit: VisitRecord): void {
  refuseClosed(visit)
  if (visit.releases.length > 0) {
    throw new RefusedError({
      code: 'wrong-state',
      message: 'This head is released and its record is closed. You can still correct a reading, with a reason.',
    })
  }
}
