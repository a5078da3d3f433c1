import 'server-only'
import type { Station, StepId, StepKey } from '@/lib/core/route/step-ids'
import type { Reader } from './db'

export type OpenStep = { readonly visitId: string; readonly step: StepKey }

const order = ['started', 'ready', 'coming']

/** What is open on a head at a station: what is begun, then what is ready, then what comes first; null: nothing is. */
export async function openStepAt(reader: Reader, headId: string, station: Station): Promise<OpenStep | null> {
  const rows = await reader.routeStep.findMany({
    where: { visit: { headId }, station, queue: { in: order } },
    select: { visitId: true, stepId: true, occurrence: true, orderKey: true, queue: true },
    orderBy: { place: 'asc' },
  })
  const row = order.flatMap((queue) => rows.filter((one) => one.queue === queue))[0]
  if (!row) return null
  const { visitId, stepId, occurrence, orderKey } = row
  return { visitId, step: { stepId: stepId as StepId, occurrence, orderId: orderKey === '' ? null : orderKey } }
}
