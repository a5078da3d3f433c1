import type { HeadDrawing } from '@/lib/core/spec/head-drawing'
import type { RouteStep } from '@/lib/core/route/types'
import type { StepId } from '@/lib/core/route/step-ids'
import { newestReadings, planRecordOf, type EffectiveReading } from '@/lib/data/facts'
import { castingFactsOf } from '@/lib/data/known-figures'
import type { VisitWithRoute } from '@/lib/data/visits'
import { headDrawing } from '@/lib/dossier/head-drawing'

/** Where somebody must see which edge is deep and which hole is which. */
const drawnAt: readonly StepId[] = ['angle-cut', 'flat-cut', 'bolt-seats', 'bolt-fit', 'bolt-reach', 'dowel-fit']

/** This head, drawn, at the steps where its edges and holes are worked on; null at the others. */
export function headAtStep(
  { visit, facts }: VisitWithRoute,
  { stepId }: RouteStep,
  readings: readonly EffectiveReading[],
): HeadDrawing | null {
  if (!drawnAt.includes(stepId) || facts.chambers === 0) return null
  const plan = visit.pair.plans[0]
  return headDrawing({
    visit,
    facts,
    readings: newestReadings(readings).toSorted((a, b) => a.seq - b.seq),
    plan: plan ? planRecordOf(plan) : null,
    casting: castingFactsOf(visit.head.casting, visit.head.chamberForm),
    chambers: facts.chambers,
  })
}
