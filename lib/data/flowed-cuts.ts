import 'server-only'
import type { Reader } from './db'

/** The newest of the shop's own cuts of one casting whose heads were flowed, with their runs. */
export const flowedCuts = (reader: Reader, castingId: string) =>
  reader.shopCut.findMany({
    where: {
      castingId,
      deepIn: { not: null },
      shallowIn: { not: null },
      visit: { readings: { some: { stepId: 'flow' } } },
    },
    include: {
      visit: {
        select: {
          id: true,
          headId: true,
          position: true,
          job: { select: { number: true } },
          head: { select: { tags: true } },
          readings: { where: { stepId: 'flow' }, include: { points: true }, orderBy: { eventSeq: 'asc' } },
        },
      },
    },
    orderBy: { seq: 'desc' },
    take: 20,
  })
