import { allow, can } from '@/lib/core/access/can'
import type { Actor } from '@/lib/core/access/roles'
import { must } from '@/lib/core/errors'
import { pointLabel, pointsOf } from '@/lib/core/readings/points'
import { readingSpecs } from '@/lib/core/readings/specs'
import { castingById } from '@/lib/data/castings'
import { db } from '@/lib/data/db'
import { flowSets } from '@/lib/data/flow-runs'
import { namesOf } from '@/lib/data/people'
import type { StepField } from '@/lib/dossier/step-fields'
import { referenceRecords, type ReferenceRecord } from './reference-records'
import { benchRuns } from './runs'
import { lineOf, type RunLine } from './see-flow'

export type ReferencesView = {
  readonly castingId: string
  readonly casting: string
  readonly mayRecord: boolean
  readonly mayCorrect: boolean
  readonly runs: readonly RunLine[]
  /** Every run as it was read and corrected, those that were withdrawn too. */
  readonly record: readonly ReferenceRecord[]
  /** The lifts to begin with, as the flow bench asks for them. */
  readonly fields: readonly StepField[]
}

/** The reference runs of a casting, and the empty form of another. */
export async function seeReferences(actor: Actor, castingId: string): Promise<ReferencesView> {
  must(allow(actor, 'casting.see'))
  const client = await db()
  const casting = await castingById(client, castingId)
  const sets = await flowSets(client, [], castingId)
  const runs = benchRuns(sets, () => ({
    whose: 'reference',
    headId: `casting ${castingId}`,
    tag: casting.name,
    jobNumber: '',
  }))
  const names = await namesOf(sets.map(({ byId }) => byId))
  return {
    castingId,
    casting: casting.name,
    mayCorrect: can(actor, 'reading.correct'),
    record: referenceRecords(sets, (id) => names.get(id) ?? ''),
    mayRecord: can(actor, 'reading.record-bench'),
    runs: runs.map((run) => lineOf(run, names.get(run.byId) ?? '')),
    fields: pointsOf('flow', { chambers: 0 }).map((point) => ({
      kind: 'flow',
      spec: readingSpecs.flow,
      point,
      pointLabel: pointLabel(point),
      answer: null,
      notTaken: null,
      filled: false,
      previous: null,
      target: null,
    })),
  }
}
