import 'server-only'
import type { Prisma } from '@/prisma/generated/sqlite/client'
import type { Reader } from './db'

const headOfVisit = {
  select: {
    id: true,
    headId: true,
    position: true,
    jobId: true,
    job: { select: { number: true, promiseOn: true } },
    head: { select: { casting: { select: { name: true } }, tags: { where: { to: null }, select: { number: true } } } },
  },
} as const satisfies Prisma.VisitDefaultArgs

const orderInclude = {
  vendor: true,
  promises: { orderBy: { at: 'asc' } },
  visits: { include: { visit: headOfVisit } },
} as const satisfies Prisma.OutsideOrderInclude

export type OrderRecord = Prisma.OutsideOrderGetPayload<{ include: typeof orderInclude }>

/** Orders with at least one head still out, oldest first. */
export const openOrders = (reader: Reader): Promise<OrderRecord[]> =>
  reader.outsideOrder.findMany({
    where: { visits: { some: { receivedAt: null } } },
    include: orderInclude,
    orderBy: { sentAt: 'asc' },
  })

export const orderById = (reader: Reader, id: string): Promise<OrderRecord | null> =>
  reader.outsideOrder.findUnique({ where: { id }, include: orderInclude })

/** Sent and received, of the newest lines that came back: for a vendor's own turnaround. */
export const turnarounds = (reader: Reader, vendorIds: readonly string[]) =>
  reader.outsideOrderVisit.findMany({
    where: { receivedAt: { not: null }, order: { vendorId: { in: [...vendorIds] } } },
    select: { receivedAt: true, order: { select: { vendorId: true, sentAt: true } } },
    orderBy: { receivedAt: 'desc' },
    take: 400,
  })

/** Steps that can go out now: an angle cut, or any step whose station is outside, on a head that is here. */
export const stepsToSend = (reader: Reader) =>
  reader.routeStep.findMany({
    where: {
      OR: [{ stepId: 'angle-cut' }, { station: 'outside' }],
      state: { in: ['ready', 'do again'] },
      visit: { place: { whereabouts: { in: ['in house', 'finished'] } } },
    },
    include: { visit: headOfVisit },
    orderBy: { place: 'asc' },
  })

export const openWaits = (reader: Reader) =>
  reader.partsWait.findMany({
    where: { arrivedAt: null, visit: { place: { whereabouts: { notIn: ['released', 'handed over', 'returned as is', 'scrapped'] } } } },
    include: { visit: headOfVisit },
    orderBy: { openedAt: 'asc' },
  })
