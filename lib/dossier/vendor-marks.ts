import type { RouteStep } from '@/lib/core/route/types'
import type { Dossier } from './dossier'

/** What we read the marks to mean, then the marks as they stand on the head. */
export function markTexts({ visit, facts }: Dossier, { orderId }: Pick<RouteStep, 'orderId'>): string[] {
  const line = visit.outside.find((entry) => entry.orderId === orderId)
  const noted = facts.readings.findLast(
    (reading) => reading.kind === 'vendor-marks' && reading.step.orderId === orderId,
  )
  return [line?.marksRead, line?.marksTyped, noted?.text].map((text) => text ?? '')
}
