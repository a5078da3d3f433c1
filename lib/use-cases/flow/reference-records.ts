import { pointLabel } from '@/lib/core/readings/points'
import type { FlowSet } from '@/lib/data/flow-runs'
import { readingChains, type HistoryEntry } from '@/lib/data/reading-history'
import { answerWords } from '@/lib/dossier/reading-text'

export type ReferenceLine = {
  /** Of the answer that stands. */
  readonly id: string
  readonly point: string
  readonly text: string
  readonly withdrawn: boolean
  readonly reason: string
  readonly by: string
  /** What stood there before, oldest first. */
  readonly earlier: readonly string[]
}

export type ReferenceRecord = {
  readonly runId: string
  readonly takenAt: Date
  readonly by: string
  readonly withdrawn: boolean
  readonly lines: readonly ReferenceLine[]
}

/** Reference runs with every answer that was ever given: what was corrected and what was withdrawn stays to be seen. */
export function referenceRecords(
  sets: readonly FlowSet[],
  name: (personId: string) => string,
): readonly ReferenceRecord[] {
  const byRun = new Map<string, { set: FlowSet; lines: ReferenceLine[] }>()
  for (const chain of readingChains(sets)) {
    const [first, last] = [chain[0], chain.at(-1)]
    if (!first || !last) continue
    const run = byRun.get(first.set.id) ?? { set: first.set, lines: [] }
    run.lines.push(lineOf(last, chain.slice(0, -1), name))
    byRun.set(first.set.id, run)
  }
  return [...byRun.values()].map(({ set, lines }) => ({
    runId: set.id,
    takenAt: set.takenAt,
    by: name(set.byId),
    withdrawn: lines.every(({ withdrawn }) => withdrawn),
    lines,
  }))
}

function lineOf(
  { point, set }: HistoryEntry,
  before: readonly HistoryEntry[],
  name: (personId: string) => string,
): ReferenceLine {
  const withdrawn = point.correction === 'withdraw'
  return {
    id: point.id,
    point: pointLabel(point.point),
    text: withdrawn ? 'withdrawn' : answerWords({ ...point, kind: 'flow' }),
    withdrawn,
    reason: point.reason,
    by: name(set.byId),
    earlier: before.map((entry) => answerWords({ ...entry.point, kind: 'flow' })),
  }
}
