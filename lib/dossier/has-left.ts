import type { VisitRecord } from '@/lib/data/visit-records'

type Ways = Pick<VisitRecord, 'handOver' | 'returned' | 'scrappedAt' | 'takenOffAt'>

/** The head is no longer on this job's way through the shop: handed over, returned as is, scrapped, or taken off. */
export const hasLeft = ({ handOver, returned, scrappedAt, takenOffAt }: Ways): boolean =>
  handOver !== null || returned !== null || scrappedAt !== null || takenOffAt !== null
