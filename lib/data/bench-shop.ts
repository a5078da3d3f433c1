import 'server-only'
import type { BenchShop } from '@/lib/core/options/bench-types'
import type { StepId } from '@/lib/core/route/step-ids'
import { dayIn, daysBetween } from '@/lib/core/shop/calendar'
import type { ShopSettings } from '@/lib/core/shop/settings'
import { turnaround } from '@/lib/core/shop/turnaround'
import { lastOut } from './bench'
import type { Reader } from './db'
import { pricesByStep } from './price-list'

type Known = { readonly settings: ShopSettings; readonly timeZone: string }

/** What the shop brings to every answer; prices only where they may be seen. */
export async function benchShop(
  reader: Reader,
  { settings, timeZone }: Known,
  withPrices: boolean,
): Promise<BenchShop> {
  const prices = withPrices ? await pricesByStep(reader) : null
  return {
    settings,
    marginCc: settings.vendorMarginCc,
    angleCautionDeg: settings.angleCautionDeg,
    angleLimitDeg: settings.angleLimitDeg,
    ptvLeastIn: { intake: settings.ptvLeastIntakeIn, exhaust: settings.ptvLeastExhaustIn },
    outsideDays: await outsideDays(reader, timeZone),
    prices: prices && Object.fromEntries(Object.entries(prices).map(([stepId, { unitMinor }]) => [stepId, unitMinor])),
  }
}

/** Median days that each kind of outside work kept a head away, whole days in the shop's zone. */
async function outsideDays(reader: Reader, timeZone: string): Promise<Readonly<Partial<Record<StepId, number>>>> {
  const days = new Map<string, number[]>()
  for (const { receivedAt, sentAt, scope } of await lastOut(reader)) {
    if (!sentAt) continue
    const out = daysBetween(dayIn(timeZone, sentAt), dayIn(timeZone, receivedAt))
    for (const stepId of scope.split(',')) days.set(stepId, [...(days.get(stepId) ?? []), out])
  }
  const medians = [...days].map(([stepId, all]) => [stepId, turnaround(all)?.medianDays ?? 0] as const)
  return Object.fromEntries(medians) as Partial<Record<StepId, number>>
}
