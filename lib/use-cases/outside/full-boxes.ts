import type { RecentLine, StepToSend } from '@/lib/data/away-list'
import { stepsOf } from '@/lib/data/outside'
import { headLine, type AwayHead } from './away-order'

/** Heads that can go out now to one vendor for one step, and how many of them make a full box. */
export type Box = {
  readonly id: string
  readonly step: string
  /** Who did this step last; null: nobody has yet. */
  readonly vendor: string | null
  /** Null: a head goes when it is ready. */
  readonly boxHeads: number | null
  readonly full: boolean
  readonly heads: readonly AwayHead[]
}

export function boxesOf(sendable: readonly StepToSend[], recent: readonly RecentLine[]): Box[] {
  const lastVendor = (stepId: string) =>
    recent.find(
      ({ order }) => order.vendor.retiredAt === null && stepsOf(order.scope).some((inScope) => inScope === stepId),
    )?.order
  const steps = [...new Set(sendable.map((row) => row.stepId))]
  return steps.map((stepId) => {
    const rows = sendable.filter((row) => row.stepId === stepId)
    const last = lastVendor(stepId)
    const boxHeads = last?.vendor.boxHeads ?? null
    return {
      id: stepId,
      step: rows[0]?.label ?? stepId,
      vendor: last?.vendor.name ?? null,
      boxHeads,
      full: boxHeads === null || rows.length >= boxHeads,
      heads: rows.map((row) => headLine(row.visit, true)),
    }
  })
}
