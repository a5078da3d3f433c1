import type { BenchQuestion, Start, CutOption, WayKind, WayStep } from './bench-types'
import type { CutCaution } from '../cut/cautions'
import { totals } from '../money/totals'
import type { WorkedPlan } from './plan-record-of'
import { wayStepsOf } from './way-steps'

type Found = {
  readonly kind: WayKind
  readonly worked: WorkedPlan | null
  readonly ruledOut: string
  readonly finishedCc?: number
  /** What is opened of each chamber. */
  readonly opensCc?: number
  readonly cautions?: readonly CutCaution[]
}

/** A way with what it takes: steps, days, price. */
export function wayOf(question: BenchQuestion, start: Start, found: Found): CutOption {
  const { kind, worked, ruledOut } = found
  const steps = ruledOut !== '' && worked === null ? [] : wayStepsOf(question, start, kind, worked?.record ?? null)
  return {
    id: `${start.id}:${kind}`,
    start,
    kind,
    worked,
    ruledOut,
    finishedCc: found.finishedCc ?? worked?.plan.finishedCc ?? null,
    opensCc: found.opensCc ?? (kind === 'equalise' ? opensMost(worked) : 0),
    steps,
    days: daysOf(question, start, steps),
    ...priceOf(question, start, steps),
    cautions: [...(found.cautions ?? []), ...(worked?.record.cautions ?? [])],
    why: '',
  }
}

/** Of the chambers that an equalising cut leaves too small, the most. */
const opensMost = (worked: WorkedPlan | null): number =>
  Math.max(0, ...(worked?.plan.outOfTolerance ?? []).map(({ overCc }) => -overCc))

/** Heads come first, then they go out: the waits add up. Null as soon as one of them is not known. */
function daysOf({ shop }: BenchQuestion, start: Start, steps: readonly WayStep[]): number | null {
  const waits = [
    start.supply === 'own' ? 0 : start.leadDays,
    ...steps.filter((step) => step.outside).map(({ stepId }) => shop.outsideDays[stepId] ?? null),
  ]
  return waits.reduce<number | null>((sum, days) => (sum === null || days === null ? null : sum + days), 0)
}

/** By the shop's list, a head; with the head itself where it must be bought. */
function priceOf(
  { shop }: BenchQuestion,
  start: Start,
  steps: readonly WayStep[],
): Pick<CutOption, 'priceMinor' | 'unpriced'> {
  const { prices } = shop
  if (prices === null) return { priceMinor: null, unpriced: [] }
  const unpriced = steps.filter(({ stepId }) => prices[stepId] === undefined).map(({ label }) => label)
  const amounts = [...steps.map(({ stepId }) => prices[stepId] ?? 0), start.costMinor ?? 0]
  const lines = amounts.map((unitMinor) => ({ quantityThousandths: 1000, unitMinor, taxMillionths: 0 }))
  return { priceMinor: totals(lines, []).netMinor, unpriced }
}
