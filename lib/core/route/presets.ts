import { noRules, type RouteRules } from './rules'
import { tableOf } from './table'
import type { Preset, WorkId } from './step-ids'

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

/** A line of ordered work in words, as this shop calls it. */
export function workLabel(work: WorkId, rules: RouteRules = noRules): string {
  if (work === 'valves') return 'New valves'
  return tableOf(rules).rowOf(work)?.label ?? 'A step that is no longer in the table'
}
