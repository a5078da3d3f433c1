import { dayIn, daysBetween } from '@/lib/core/shop/calendar'
import { turnaround } from '@/lib/core/shop/turnaround'
import type { StepId } from '@/lib/core/route/step-ids'
import { lastOut } from '@/lib/data/bench'
import type { Reader } from '@/lib/data/db'

/** Median days that each kind of outside work kept a head away, whole days in the shop's zone. */
export async function outsideDays(
  reader: Reader,
  timeZone: string,
): Promise<Readonly<Partial<Record<StepId, number>>>> {
  const days = new Map<string, number[]>()
  for (const { receivedAt, order } of await lastOut(reader)) {
    if (!receivedAt || !order.sentAt) continue
    const out = daysBetween(dayIn(timeZone, order.sentAt), dayIn(timeZone, receivedAt))
    for (const stepId of order.scope.split(',')) days.set(stepId, [...(days.get(stepId) ?? []), out])
  }
  const medians = [...days].map(([stepId, all]) => [stepId, turnaround(all)?.medianDays ?? 0] as const)
  return Object.fromEntries(medians) as Partial<Record<StepId, number>>
}
