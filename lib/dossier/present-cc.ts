import { chamberMean, headCc, type ChamberMean, type HeadCc } from '@/lib/core/chamber/burette'
import type { ShopSettings } from '@/lib/core/shop/settings'
import type { StepId } from '@/lib/core/route/step-ids'
import type { EffectiveReading } from '@/lib/core/readings/effective'
import type { Dossier } from './dossier'

export type PresentCc = {
  /** One a chamber that was measured, by its number. */
  readonly chambers: ReadonlyMap<string, ChamberMean>
  readonly head: HeadCc | null
}

/** Steps whose cc say what the head held before the cut; the later one counts. */
const beforeSteps: readonly StepId[] = ['open-chamber', 'chambers']

/** What the chambers held before the cut: several readings of one chamber at one step are repeats of it. */
export function ccBeforeCut({ readings: all, settings }: Pick<Dossier, 'readings' | 'settings'>): PresentCc {
  const readings = all.filter((reading) => reading.kind === 'cc')
  const step = beforeSteps.find((stepId) => readings.some((reading) => reading.step.stepId === stepId))
  return ccAt(
    readings.filter((reading) => reading.step.stepId === step),
    settings,
  )
}

/** Means of the chambers among these readings. */
export function ccAt(readings: readonly EffectiveReading[], settings: ShopSettings): PresentCc {
  const facts = { divisionCc: settings.buretteDivisionCc, repeatabilityCc: settings.ccRepeatabilityCc }
  const chambers = new Map<string, ChamberMean>()
  for (const point of new Set(readings.map((reading) => reading.point))) {
    const values = readings.flatMap((reading) =>
      reading.point === point && reading.value !== null ? [reading.value] : [],
    )
    const mean = chamberMean(values, facts)
    if (mean.ok) chambers.set(point, mean.value)
  }
  const head = headCc([...chambers.values()])
  return { chambers, head: head.ok ? head.value : null }
}
