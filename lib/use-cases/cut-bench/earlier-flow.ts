import { compareFlow } from '@/lib/core/flow/compare'
import type { FlowPort } from '@/lib/core/flow/types'
import type { EarlierFlow } from '@/lib/core/options/earlier-flow'
import type { FlowOccurrence } from '@/lib/core/route/step-ids'
import type { Reader } from '@/lib/data/db'
import { effectiveReadings } from '@/lib/core/readings/effective'
import { flowedCuts } from '@/lib/data/flowed-cuts'
import { runOf } from '@/lib/dossier/flow-run'
import { headLabel } from '@/lib/core/shop/tag-number'

type Cut = Awaited<ReturnType<typeof flowedCuts>>[number]

/** What the shop's own earlier cuts of a casting did to flow, as far as they can be held against each other. */
export async function earlierFlowOf(
  reader: Reader,
  castingId: string,
  repeatability: number,
): Promise<readonly EarlierFlow[]> {
  const cuts = await flowedCuts(reader, castingId)
  return cuts.flatMap((cut) => flowOf(cut, repeatability) ?? [])
}

function flowOf({ visit, shallowIn, deepIn }: Cut, repeatability: number): EarlierFlow | null {
  const readings = effectiveReadings(visit.readings)
  const runAt = (port: FlowPort, ...occurrences: readonly FlowOccurrence[]) =>
    occurrences
      .map((occurrence) =>
        runOf(
          readings.filter(({ step }) => step.occurrence === occurrence),
          port,
          visit.headId,
        ),
      )
      .find((run) => run !== null) ?? null
  const percentOf = (port: FlowPort): number | null => {
    const before = runAt(port, 'after-port', 'before')
    const after = runAt(port, 'after-cut', 'after')
    if (!before || !after) return null
    const compared = compareFlow(before.run, after.run, { repeatability })
    if (!compared.ok || compared.value.differs.length > 0) return null
    return compared.value.means.find(({ band }) => band === 'whole')?.diffPercent ?? null
  }
  const [intakePercent, exhaustPercent] = [percentOf('intake'), percentOf('exhaust')]
  if (intakePercent === null && exhaustPercent === null) return null
  return {
    tag: headLabel(visit),
    jobNumber: visit.job.number,
    deepestIn: Math.max(shallowIn ?? 0, deepIn ?? 0),
    intakePercent,
    exhaustPercent,
    cutAlone: readings.some(({ step }) => step.occurrence === 'after-cut'),
  }
}
