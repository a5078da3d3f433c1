import type { Rework } from '@/lib/core/route/head-marks'
import type { RouteStep } from '@/lib/core/route/types'
import type { VisitRecord } from '@/lib/data/visit-records'

type Head = { readonly visit: VisitRecord; readonly route: readonly RouteStep[] }

/** What is to be put right on this head and is not yet: what the owner decided, then what vendors sent back wrong. */
export const openRework = (head: Head): Rework[] => [...ownersRework(head), ...vendorsRework(head)]

const isOpen = ({ state }: RouteStep): boolean => state !== 'done' && state !== 'waived' && state !== 'not needed'

/** It counts until the step at which the hold was opened is ticked after the decision; without a step, to the release. */
function ownersRework({ visit }: Head): Rework[] {
  return visit.holds.flatMap(({ decision, decidedAt, decisionNote, stepId }) => {
    if (decision !== 'rework' || decidedAt === null) return []
    const isDone =
      stepId === null
        ? visit.releases.length > 0
        : visit.events.some(
            (event) => event.kind === 'tick' && event.stepId === stepId && event.at.getTime() > decidedAt.getTime(),
          )
    return isDone ? [] : [{ from: 'owner', text: decisionNote }]
  })
}

/** It counts until the order that does it again is checked in here; without one, while a step is owed for it. */
function vendorsRework({ visit, route }: Head): Rework[] {
  return visit.outside.flatMap(({ orderId, order, rejectedAt, rejectedWhy }) => {
    if (rejectedAt === null) return []
    const redo = visit.outside.findLast((line) => line.order.redoOfId === orderId)
    const open = route.filter(isOpen)
    const isOwed = redo
      ? open.some((step) => step.orderId === redo.orderId)
      : open.some(({ reason }) => reason?.code === 'rejected' && reason.why === rejectedWhy)
    const name = { vendor: order.vendor.name, number: order.number }
    return isOwed ? [{ from: 'vendor', order: name, text: rejectedWhy }] : []
  })
}
