import { noRules, type RouteRules } from '../route/rules'
import { tableOf } from '../route/table'
import type { WorkId } from '../route/step-ids'

export type WorkGroup = { readonly label: string; readonly work: readonly WorkId[] }

const stock: readonly WorkGroup[] = [
  { label: 'Cut', work: ['flat-cut', 'angle-cut', 'open-chamber'] },
  {
    label: 'Ports and flow',
    work: ['port', 'flow-before', 'flow-after-port', 'flow-after-cut', 'flow-after'],
  },
  {
    label: 'Seats, guides, valves',
    work: ['seat-work', 'guides', 'inserts', 'valves', 'springs', 'heights'],
  },
  { label: 'Checks and figures', work: ['pressure', 'thickness', 'chambers', 'seat-before', 'finished'] },
  { label: 'Repair and special work', work: ['weld', 'straighten', 'steam-holes', 'groove', 'coating'] },
  { label: 'Assembly', work: ['assemble', 'leak'] },
]

/**
 * What a customer can order in this shop, grouped as it is asked at the counter: what stands from the start, and the
 * shop's own steps that some column says come when ordered. All else a route adds by itself.
 */
export function orderableWork(rules: RouteRules = noRules): readonly WorkGroup[] {
  const own = tableOf(rules).rows.flatMap((row): WorkId[] =>
    row.own && !row.own.retired && row.cells.includes('○') ? [row.own.id] : [],
  )
  return own.length === 0 ? stock : [...stock, { label: 'The shop’s own', work: own }]
}
