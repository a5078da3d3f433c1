import { rowOf, steps } from './steps'
import type { FlowOccurrence, Preset, StepId, WorkId } from './types'

export const presetLabels: Readonly<Record<Preset, string>> = {
  refresh: 'Refresh',
  'cut-to-size': 'Cut to size',
  'bought-in': 'Bought in, already cut',
  'port-and-flow': 'Port and flow',
  'seat-or-guide': 'Seat or guide repair',
}

/**
 * What a job starts from, line by line changeable. Steps that always follow (check in, follow-up of a cut, final
 * inspection) are not lines: the route adds them. A cut stands here as a line until there is a cut plan.
 */
export const presetWork: Readonly<Record<Preset, readonly WorkId[]>> = {
  refresh: ['seat-work', 'springs', 'assemble', 'leak'],
  'cut-to-size': ['flow-before', 'flat-cut', 'flow-after'],
  'bought-in': ['thickness', 'finished', 'heights', 'assemble', 'leak'],
  'port-and-flow': ['flow-before', 'port', 'flow-after'],
  'seat-or-guide': ['guides', 'seat-work', 'leak'],
}

/** A line of ordered work in words. */
export function workLabel(work: WorkId): string {
  if (work === 'valves') return 'New valves'
  const occurrence = flowOccurrenceOf(work)
  return occurrence ? rowOf(`flow-${occurrence}`).label : steps[work as StepId].label
}

/** The flow run that a line orders; null when it orders something else. */
export function flowOccurrenceOf(work: WorkId): FlowOccurrence | null {
  return work.startsWith('flow-') ? (work.slice('flow-'.length) as FlowOccurrence) : null
}
