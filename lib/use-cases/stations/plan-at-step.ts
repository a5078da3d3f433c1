import { planTitle } from '@/lib/core/options/plan-words'
import type { RouteStep } from '@/lib/core/route/types'
import type { ShopSettings } from '@/lib/core/shop/settings'
import { formatFigure, formatThou } from '@/lib/core/units/format-figure'
import type { PlanRecord } from '@/lib/core/cut/plan-record'
import type { Reader } from '@/lib/data/db'
import { effectiveReadings, planRecordOf, removedBeforeIn, type VisitRecord } from '@/lib/data/facts'
import type { VisitWithRoute } from '@/lib/data/visits'
import { cutAtStep, type CutAtStep } from './cut-at-step'
import { nextPassAtMill, type NextPass } from '@/lib/dossier/next-pass'

export type { NextPass } from '@/lib/dossier/next-pass'

type Line = { readonly label: string; readonly value: string; readonly unit: string; readonly note: string }

/** The plan's figures for one step. At the deck mill one is huge: how deep to stop from touch-off. */
export type PlanAtStep = {
  readonly huge: Line | null
  /** At the deck mill, for a cut to size. */
  readonly pass: NextPass | null
  /** What a cut really took, once it has been measured. */
  readonly cut: CutAtStep | null
  readonly lines: readonly Line[]
  readonly cautions: readonly string[]
}

const none: PlanAtStep = { huge: null, pass: null, cut: null, lines: [], cautions: [] }
const line = (label: string, value: string, note = ''): Line => ({ label, value, unit: '', note })

export async function planAtStep(
  reader: Reader,
  found: VisitWithRoute,
  step: RouteStep,
  settings: ShopSettings,
): Promise<PlanAtStep> {
  const plan = found.visit.pair.plans[0]
  if (!plan) return none
  const record = planRecordOf(plan)
  const base: PlanAtStep = {
    ...none,
    cut: cutAtStep(found, step, record, settings),
    lines: [line('Plan', planTitle(record))],
    cautions: record.cautions,
  }
  if (step.stepId === 'flat-cut') return flatCut(reader, found, record, settings)
  if (step.stepId === 'angle-cut') return angleCut(base, record)
  if (step.stepId === 'finished') return finished(base, record)
  return ['chambers', 'intake', 'ptv', 'bolt-seats', 'bolt-fit', 'seat-after', 'arrival-figures'].includes(step.stepId)
    ? base
    : none
}

function angleCut(base: PlanAtStep, record: PlanRecord): PlanAtStep {
  const huge = {
    label: `Depth at the ${record.deepEdge} edge, nothing at the other`,
    value: (record.angleIn * 1000).toFixed(1),
    unit: 'thou',
    note: record.angleDeg === null ? '' : `${record.angleDeg.toFixed(2)}°`,
  }
  return { ...base, huge }
}

const finished = (base: PlanAtStep, record: PlanRecord): PlanAtStep => ({
  ...base,
  lines: [
    ...base.lines,
    ...(record.targetCc === null ? [] : [line('Target', formatFigure(record.targetCc, 'chamberVolume'))]),
    ...(record.predictedFinishedCc === null
      ? []
      : [line('Predicted', formatFigure(record.predictedFinishedCc, 'chamberVolume'))]),
  ],
})

/** Deepest total from touch-off among the other heads of the pair. */
async function mateDepth(reader: Reader, visit: VisitRecord): Promise<string> {
  const rows = await reader.reading.findMany({
    where: {
      kind: 'cut-depth',
      set: { stepId: 'flat-cut', visit: { pairId: visit.pairId, id: { not: visit.id } } },
    },
    select: { value: true },
    orderBy: { id: 'desc' },
    take: 1,
  })
  const depth = rows[0]?.value
  return depth === null || depth === undefined ? 'not cut yet' : formatThou(depth)
}

async function flatCut(
  reader: Reader,
  found: VisitWithRoute,
  record: PlanRecord,
  settings: ShopSettings,
): Promise<PlanAtStep> {
  const { visit } = found
  const removed = removedBeforeIn(visit, effectiveReadings(visit.readings))
  const mate = visit.pair.visits.length > 1 ? [line('The mate', await mateDepth(reader, visit))] : []
  const lines = [
    line('Plan', planTitle(record)),
    ...mate,
    line(
      'Removed since new, before this',
      removed === null ? 'new thickness unknown' : formatFigure(removed, 'cutDepth'),
    ),
  ]
  const base: PlanAtStep = { ...none, lines, cautions: record.cautions }
  if (record.kind !== 'clean-up') return { ...base, pass: await nextPassAtMill(reader, found, record, settings) }
  const huge = {
    label: 'Stop at, at the latest',
    value: (record.flatIn * 1000).toFixed(1),
    unit: 'thou',
    note: 'As little as makes it flat.',
  }
  return { ...base, huge }
}
