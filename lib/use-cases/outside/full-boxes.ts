import type { StepToSend } from '@/lib/data/away-list'
import type { TookRow } from '@/lib/data/finish-history'
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

export function boxesOf(sendable: readonly StepToSend[], took: readonly TookRow[]): Box[] {
  // A retired vendor has no box.
  const lastVendor = (stepId: string) =>
    took.find(({ box, scope }) => box !== null && stepsOf(scope).some((inScope) => inScope === stepId))
  const steps = [...new Set(sendable.map((row) => row.stepId))]
  return steps.map((stepId) => {
    const rows = sendable.filter((row) => row.stepId === stepId)
    const last = lastVendor(stepId)
    const boxHeads = last?.box ? Number(last.box) : null
    return {
      id: stepId,
      step: rows[0]?.label ?? stepId,
      vendor: last?.at ?? null,
      boxHeads,
      full: boxHeads === null || rows.length >= boxHeads,
      heads: rows.map((row) => headLine(row.visit, true)),
    }
  })
}
