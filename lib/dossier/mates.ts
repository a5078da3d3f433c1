import { headName } from '@/lib/core/shop/tag-number'
import type { VisitRecord } from '@/lib/data/visit-records'

/** Another head of the same pair. */
export type Mate = {
  readonly visitId: string
  readonly headId: string
  readonly label: string
  /** Why it is on hold now, oldest first. */
  readonly holdReasons: readonly string[]
}

/** The other heads of a visit's pair, by their place on the job. */
export const matesOf = ({ id, pair, job }: VisitRecord): Mate[] =>
  pair.visits
    .filter((other) => other.id !== id)
    .map((other) => ({
      visitId: other.id,
      headId: other.headId,
      label: headName(other.head.tags, job.number, other.position),
      holdReasons: other.holds
        .filter((hold) => hold.decidedAt === null)
        .toSorted((a, b) => a.openedAt.getTime() - b.openedAt.getTime())
        .map((hold) => hold.reason),
    }))
