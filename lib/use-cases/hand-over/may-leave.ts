import type { VisitRecord } from '@/lib/data/visit-records'

/** Released, going back as it is, or scrapped: a customer's property can always leave. */
export const mayLeave = (visit: Pick<VisitRecord, 'releases' | 'returned' | 'scrappedAt'>): boolean =>
  visit.releases.length > 0 || visit.returned !== null || visit.scrappedAt !== null
