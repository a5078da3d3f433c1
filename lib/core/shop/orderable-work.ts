import type { WorkId } from '../route/types'

/** What a customer can order, grouped as it is asked at the counter. All else a route adds by itself. */
export const orderableWork: readonly { readonly label: string; readonly work: readonly WorkId[] }[] = [
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
