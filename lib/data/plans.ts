import 'server-only'
import { RefusedError } from '@/lib/core/errors'
import type { Reader } from './db'

export async function planById(reader: Reader, id: string) {
  const plan = await reader.planVersion.findUnique({ where: { id }, include: { pair: { select: { jobId: true } } } })
  if (!plan) throw new RefusedError({ code: 'not-found', message: 'There is no such plan.' })
  return plan
}

/** Whether the pair has a newer version of its plan. */
export async function isOutdated(reader: Reader, plan: { pairId: string; number: number }): Promise<boolean> {
  const { pairId, number } = plan
  return (await reader.planVersion.count({ where: { pairId, number: { gt: number } } })) > 0
}
