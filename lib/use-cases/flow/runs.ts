import { repeatabilityOf, type Repeatability } from '@/lib/core/flow/repeatability'
import { flowPorts, type FlowPort, type FlowRun } from '@/lib/core/flow/types'
import { workLabel } from '@/lib/core/route/presets'
import type { FlowOccurrence } from '@/lib/core/route/step-ids'
import { lower } from '@/lib/core/route/words'
import { effectiveReadings, type EffectiveReading } from '@/lib/core/readings/effective'
import type { FlowSet } from '@/lib/data/flow-runs'
import { runNumber, runOf, type PaperRun } from '@/lib/dossier/flow-run'

/** Whose flow it is: this head's, its mate's on the same job, or of no head of a job at all. */
export type Whose = 'own' | 'mate' | 'reference'

export type BenchRun = {
  /** Of its first set of readings: it stays the same when lifts are added later. */
  readonly id: string
  /** What it is a repeat of, or is repeated by: the same step of the same visit. */
  readonly stepKey: string
  readonly whose: Whose
  readonly headId: string
  /** "T-0412, flow run before, run 2" */
  readonly name: string
  /** "before", "after 2": short enough to stand at the end of a curve. */
  readonly shortName: string
  readonly jobNumber: string
  readonly takenAt: Date
  readonly byId: string
  readonly ports: Readonly<Record<FlowPort, PaperRun | null>>
}

export type Subject = {
  readonly whose: Whose
  readonly headId: string
  readonly tag: string
  readonly jobNumber: string
}

/**
 * The runs among sets of flow readings, oldest first. Readings of one step of one visit belong to one run unless they
 * were entered as a repeat; of one run the newest reading of a lift counts.
 */
export function benchRuns(sets: readonly FlowSet[], subjectOf: (set: FlowSet) => Subject | null): readonly BenchRun[] {
  const setById = new Map(sets.map((set) => [set.id, set]))
  const groups = new Map<string, EffectiveReading[]>()
  for (const reading of effectiveReadings([...sets])) {
    const set = setById.get(reading.setId)
    if (!set || reading.kind !== 'flow') continue
    const key = `${stepKeyOf(set)}|${set.visitId === null ? set.id : runNumber(set)}`
    groups.set(key, [...(groups.get(key) ?? []), reading])
  }
  const runs = [...groups.values()].flatMap((readings) => {
    const set = setById.get(readings[0]?.setId ?? '')
    const subject = set && subjectOf(set)
    return set && subject ? [benchRun(set, subject, readings)] : []
  })
  return toldApart(runs.sort((a, b) => a.takenAt.getTime() - b.takenAt.getTime() || a.name.localeCompare(b.name)))
}

/** The same step on another job, and another reference run, would have the same name. */
function toldApart(runs: readonly BenchRun[]): readonly BenchRun[] {
  return runs.map((run) => {
    const alike = runs.filter(({ name }) => name === run.name)
    if (alike.length < 2) return run
    const mark = run.jobNumber === '' ? `no. ${alike.indexOf(run) + 1}` : `job ${run.jobNumber}`
    return { ...run, name: `${run.name}, ${mark}`, shortName: `${run.shortName}, ${mark}` }
  })
}

const stepKeyOf = (set: FlowSet): string =>
  [set.visitId ?? '', set.castingId ?? '', set.occurrence, set.orderId ?? ''].join('|')

function benchRun(set: FlowSet, subject: Subject, readings: readonly EffectiveReading[]): BenchRun {
  const number = runNumber(set)
  const reference = set.visitId === null
  const step = reference ? 'reference run' : lower(workLabel(`flow-${set.occurrence as FlowOccurrence}`))
  const short = reference ? 'reference' : `${set.occurrence.replaceAll('-', ' ')}${number > 1 ? ` ${number}` : ''}`
  const port = (name: FlowPort) => runOf(readings, name, subject.headId)
  return {
    id: set.id,
    stepKey: stepKeyOf(set),
    whose: subject.whose,
    headId: subject.headId,
    name: `${subject.tag}, ${step}${number > 1 ? `, run ${number}` : ''}`,
    shortName: subject.whose === 'mate' ? `${subject.tag} ${short}` : short,
    jobNumber: subject.jobNumber,
    takenAt: set.takenAt,
    byId: set.byId,
    ports: { intake: port('intake'), exhaust: port('exhaust') },
  }
}

/** How well the bench repeated itself on these runs; null when none of them is a repeat of another. */
export function repeatsOf(runs: readonly BenchRun[]): Repeatability | null {
  const groups = new Map<string, FlowRun[]>()
  for (const run of runs.filter(({ whose }) => whose !== 'reference')) {
    for (const port of flowPorts) {
      const own = run.ports[port]
      // Two chambers are two ports: a run of the other one is no repeat.
      const key = `${run.stepKey}|${port}|${own?.chamber ?? ''}`
      if (own) groups.set(key, [...(groups.get(key) ?? []), own.run])
    }
  }
  // Repeats that are not like for like say nothing of the bench; they must not silence those that are.
  const sound = [...groups.values()].filter((group) => repeatabilityOf([group]).ok)
  const pooled = repeatabilityOf(sound)
  return pooled.ok ? pooled.value : null
}
