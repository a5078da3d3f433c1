import { allow } from '@/lib/core/access/can'
import type { Actor } from '@/lib/core/access/roles'
import { must } from '@/lib/core/errors'
import type { StepKey } from '@/lib/core/route/step-ids'
import { db } from '@/lib/data/db'
import { flowSets } from '@/lib/data/flow-runs'
import { currentSettings } from '@/lib/data/settings'
import { repeatWords } from './repeat-words'
import { runNumber } from '@/lib/dossier/flow-run'
import { benchRuns, repeatsOf } from './runs'

export type FlowStepView = {
  /** Number of the next repeat; null before the first run has a reading. */
  readonly nextRun: number | null
  readonly repeatability: string
}

/** How often a flow step has been run, and what its repeats say of the bench. */
export async function seeFlowStep(actor: Actor, visitId: string, step: StepKey): Promise<FlowStepView> {
  must(allow(actor, 'job.see'))
  const client = await db()
  const own = (await flowSets(client, [visitId], null)).filter(
    ({ occurrence, orderId }) => occurrence === step.occurrence && orderId === step.orderId,
  )
  const runs = benchRuns(own, () => ({ whose: 'own', headId: visitId, tag: '', jobNumber: '' }))
  const setting = (await currentSettings(client)).values.flowRepeatabilityPart
  const highest = Math.max(...own.map(runNumber))
  return {
    nextRun: runs.length === 0 ? null : highest + 1,
    repeatability: repeatWords(repeatsOf(runs), setting),
  }
}
