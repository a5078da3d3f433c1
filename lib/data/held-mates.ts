import 'server-only'
import { headName } from '@/lib/core/shop/tag-number'
import type { Reader } from './db'

export type HeldHead = {
  readonly pairId: string
  readonly visitId: string
  readonly headId: string
  readonly tag: string
  readonly reason: string
}

/** The heads of these pairs that are on hold now, each with its reason: whoever works on the mate is told. */
export async function heldInPairs(reader: Reader, pairIds: readonly string[]): Promise<HeldHead[]> {
  const holds = await reader.hold.findMany({
    where: { decidedAt: null, visit: { pairId: { in: [...new Set(pairIds)] } } },
    select: {
      reason: true,
      visit: {
        select: {
          id: true,
          headId: true,
          pairId: true,
          position: true,
          job: { select: { number: true } },
          head: { select: { tags: { select: { number: true, to: true } } } },
        },
      },
    },
    orderBy: { openedAt: 'asc' },
  })
  return holds.map(({ reason, visit }) => ({
    pairId: visit.pairId,
    visitId: visit.id,
    headId: visit.headId,
    tag: headName(visit.head.tags, visit.job.number, visit.position),
    reason,
  }))
}

/** Those of them that are the mates of one head. */
export const matesHeld = (
  held: readonly HeldHead[],
  visit: { readonly id: string; readonly pairId: string },
): HeldHead[] => held.filter(({ pairId, visitId }) => pairId === visit.pairId && visitId !== visit.id)
