import { RefusedError } from '@/lib/core/errors'
import type { VisitRecord } from '@/lib/data/facts'

/** A head that has left takes no more work; a correction is still possible, and makes a new revision. */
export function refuseClosed(visit: VisitRecord): void {
  const left = visit.handOver ?? visit.returned ?? visit.scrappedAt
  if (left)
    throw new RefusedError({
      code: 'wrong-state',
      message: 'This head has left the shop: nothing more can be done to it on this job.',
    })
}

export function refuseReleased(visit: VisitRecord): void {
  refuseClosed(visit)
  if (visit.releases.length > 0) {
    throw new RefusedError({
      code: 'wrong-state',
      message: 'This head is released: its record is frozen. A reading can be corrected, with a reason.',
    })
  }
}
