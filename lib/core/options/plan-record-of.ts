import { makePlan, type PlanAnswer, type PlanInput, type Split } from '../cut/plan'
import type { PlanRecord } from '../cut/plan-record'
import { centroidShareOf } from '../cut/split'
import { seatWorkCc } from '../cut/seat-work'
import { ok, refuse, type Result } from '../errors'
import type { CutKind } from '../route/step-ids'
import type { Consequences } from './consequences'
import { consequencesOf, flatDeckOf, planWithConsequences, type WhatFollowsInput } from './plan-consequences'

export type PlanChoiceFigures = {
  readonly kind: CutKind
  readonly splitBy: Split['by']
  readonly flatIn: number | null
  readonly angleIn: number | null
  readonly angleDeg: number | null
  readonly stopAtIn: number | null
  readonly sinkIn: number | null
  /** Of a flat-deck head; null or left out: as it was booked. */
  readonly thicknessIn?: number | null
}

export type PlanInputs = Omit<
  PlanInput,
  'kind' | 'split' | 'seatWorkGivesCc' | 'stopAtIn' | 'centroidShare' | 'milledWidthIn'
> &
  Omit<WhatFollowsInput, 'plan' | 'seatWorkGivesCc' | 'sinkIn'>

/** A choice of cut, worked out: the plan's own figures, all that follows from them, and the record that is frozen. */
export type WorkedPlan = {
  readonly plan: PlanAnswer
  readonly follows: Consequences
  /** What each flat-deck head becomes; null: heads with chambers. */
  readonly flatDeck: ReturnType<typeof flatDeckOf>
  readonly record: PlanRecord
}

/**
 * A choice of cut worked out against what is known, or why it cannot be. The same function answers as somebody types, as
 * the slider moves, and when the plan is kept.
 */
export function workedPlan(of: PlanInputs, choice: PlanChoiceFigures): Result<WorkedPlan> {
  const ground = withThickness(of, choice)
  const split = splitOf(choice)
  if (!split.ok) return split
  const sinkIn = choice.sinkIn ?? 0
  const seatWorkGivesCc = seatWorkCc(ground.casting, ground.flatDeck ? 0 : sinkIn)
  if (!seatWorkGivesCc.ok) return seatWorkGivesCc
  const { openingCentreIn, milledWidthIn } = ground.casting
  const plan = makePlan({
    ...ground,
    kind: choice.kind,
    split: split.value,
    stopAtIn: choice.stopAtIn,
    seatWorkGivesCc: seatWorkGivesCc.value,
    centroidShare: centroidShareOf({ openingCentreIn, milledWidthIn }),
    milledWidthIn: milledWidthIn ?? null,
  })
  if (!plan.ok) return plan
  const input = { ...ground, plan: plan.value, seatWorkGivesCc: seatWorkGivesCc.value, sinkIn }
  const follows = consequencesOf(input)
  return ok({ plan: plan.value, follows, flatDeck: flatDeckOf(input), record: planWithConsequences(input, follows) })
}

const withThickness = (ground: PlanInputs, { thicknessIn }: PlanChoiceFigures): PlanInputs =>
  ground.flatDeck && typeof thicknessIn === 'number'
    ? { ...ground, flatDeck: { wantedThicknessIn: thicknessIn } }
    : ground

/** The record alone. */
export function planRecordOf(ground: PlanInputs, choice: PlanChoiceFigures): Result<PlanRecord> {
  const worked = workedPlan(ground, choice)
  return worked.ok ? ok(worked.value.record) : worked
}

function splitOf({ kind, splitBy, flatIn, angleIn, angleDeg }: PlanChoiceFigures): Result<Split> {
  if (kind !== 'angle-flat' || splitBy === 'margin') return ok({ by: 'margin' })
  const missing = (what: string, field: string): Result<Split> =>
    refuse('missing', `Type the ${what}.`, { needs: [field], fields: { [field]: `Type the ${what}.` } })
  if (splitBy === 'flat') return flatIn === null ? missing('flat part', 'flatIn') : ok({ by: 'flat', flatIn })
  if (splitBy === 'angle') return angleIn === null ? missing('angle part', 'angleIn') : ok({ by: 'angle', angleIn })
  return angleDeg === null ? missing('angle in degrees', 'angleDeg') : ok({ by: 'degrees', angleDeg })
}
