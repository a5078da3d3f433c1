import { allow } from '@/lib/core/access/can'
import type { Actor } from '@/lib/core/access/roles'
import { must, RefusedError } from '@/lib/core/errors'
import { flowPorts } from '@/lib/core/flow/types'
import { db } from '@/lib/data/db'
import { castingOfHead, flowSets, tagsOfHeads, visitsOfPairs, type FlowSet } from '@/lib/data/flow-runs'
import { namesOf } from '@/lib/data/people'
import { currentSettings } from '@/lib/data/settings'
import type { FlowChoice } from '@/lib/schemas/flow'
import { holdRuns, ratioOf, type PortComparison, type Ratio } from './compare-runs'
import { repeatWords } from './repeat-words'
import { benchRuns, repeatsOf, type BenchRun, type Subject, type Whose } from './runs'

export type RunLine = {
  readonly id: string
  readonly whose: Whose
  readonly name: string
  readonly jobNumber: string
  readonly takenAt: Date
  readonly by: string
  /** "Intake, exhaust" */
  readonly ports: string
  readonly conditions: string
}

export type FlowView = {
  readonly headId: string
  readonly tag: string
  readonly runs: readonly RunLine[]
  /** In the order they are held against each other: the first is the one before. */
  readonly chosen: readonly string[]
  readonly comparison: readonly PortComparison[]
  readonly ratio: Ratio | null
  readonly repeatability: string
}

/** All flow runs of a head over all its visits, its mate's and its casting's, and the chosen ones held together. */
export async function seeFlow(actor: Actor, headId: string, choice: FlowChoice): Promise<FlowView> {
  must(allow(actor, 'job.see'))
  const client = await db()
  const visits = await visitsOfPairs(client, headId)
  const casting = await castingOfHead(client, headId)
  const tags = await tagsOfHeads(client, [headId, ...visits.map((visit) => visit.headId)])
  if (visits.length === 0 && tags.length === 0) {
    throw new RefusedError({ code: 'not-found', message: 'Head not found.' })
  }
  const sets = await flowSets(
    client,
    visits.map(({ id }) => id),
    casting?.id ?? null,
  )
  const tagOf = (id: string): string => {
    const own = tags.filter((tag) => tag.headId === id)
    return (own.find((tag) => tag.to === null) ?? own.at(-1))?.number ?? 'no tag yet'
  }
  const subjectOf = (set: FlowSet): Subject | null => {
    if (set.visitId === null) {
      return {
        whose: 'reference',
        headId: `casting ${set.castingId}`,
        tag: casting?.name ?? '',
        jobNumber: '',
      }
    }
    const visit = visits.find(({ id }) => id === set.visitId)
    if (!visit) return null
    const whose = visit.headId === headId ? 'own' : 'mate'
    return { whose, headId: visit.headId, tag: tagOf(visit.headId), jobNumber: visit.jobNumber }
  }
  const runs = benchRuns(sets, subjectOf)
  const chosen = chosenRuns(runs, choice)
  const settings = (await currentSettings(client)).values
  const names = await namesOf(runs.map(({ byId }) => byId))
  return {
    headId,
    tag: tagOf(headId),
    runs: runs.map((run) => lineOf(run, names.get(run.byId) ?? '')),
    chosen: chosen.map(({ id }) => id),
    comparison: holdRuns(chosen, settings.flowRepeatabilityPart),
    ratio: ratioOf(chosen),
    repeatability: repeatWords(repeatsOf(runs), settings.flowRepeatabilityPart),
  }
}

/** The run before comes first: the one that was named, else a reference, else the oldest. Unasked: this head's own ends. */
function chosenRuns(runs: readonly BenchRun[], { run: wanted, from }: FlowChoice): readonly BenchRun[] {
  const own = runs.filter(({ whose }) => whose === 'own')
  const ids =
    wanted.length > 0 || from !== null ? [...wanted, ...(from === null ? [] : [from])] : [own[0]?.id, own.at(-1)?.id]
  const place = (run: BenchRun): number => (run.id === from ? 0 : run.whose === 'reference' ? 1 : 2)
  return runs.filter(({ id }) => ids.includes(id)).sort((a, b) => place(a) - place(b))
}

export function lineOf(run: BenchRun, by: string): RunLine {
  const ran = flowPorts.filter((port) => run.ports[port] !== null)
  return {
    id: run.id,
    whose: run.whose,
    name: run.name,
    jobNumber: run.jobNumber,
    takenAt: run.takenAt,
    by,
    ports: ran.join(', '),
    conditions: ran.map((port) => run.ports[port]?.conditionWords ?? '').find((words) => words !== '') ?? '',
  }
}
