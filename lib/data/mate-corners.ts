import 'server-only'
import { cornersOf } from '@/lib/core/straightness/corners-fit'
import { headName } from '@/lib/core/shop/tag-number'
import type { Reader } from './db'
import { effectiveReadings, visitInclude, type VisitRecord } from './facts'

export type MateCorners = {
  readonly tag: string
  /** In inches, by corner. */
  readonly corners: ReturnType<typeof cornersOf>
}

/** The finished corner thicknesses of the other heads of a pair, as far as they are measured. */
export async function mateCorners(reader: Reader, visit: Pick<VisitRecord, 'id' | 'pairId'>): Promise<MateCorners[]> {
  const mates = await reader.visit.findMany({
    where: { pairId: visit.pairId, id: { not: visit.id }, scrappedAt: null, returned: null },
    select: {
      position: true,
      job: { select: { number: true } },
      head: { select: { tags: { select: { number: true, to: true } } } },
      readings: { ...visitInclude.readings, where: { stepId: 'finished' } },
    },
    orderBy: { position: 'asc' },
  })
  return mates.map(({ position, job, head, readings }) => ({
    tag: headName(head.tags, job.number, position),
    corners: cornersOf(effectiveReadings(readings)),
  }))
}
