import type { Whereabouts } from '@/lib/core/route/types'
import { whereabouts } from '@/lib/core/route/whereabouts'
import type { Dossier } from './dossier'

/** Where the head is, from the facts. */
export const whereaboutsOf = ({ visit, facts, route }: Pick<Dossier, 'visit' | 'facts' | 'route'>): Whereabouts =>
  whereabouts(facts, {
    arrived: route.some((step) => step.stepId === 'check-in' && (step.state === 'done' || step.state === 'waived')),
    onOrder: facts.onOrder === true,
    released: visit.releases.length > 0,
    handedOver: visit.handOver !== null,
    returnedAsIs: visit.returned !== null,
    scrapped: visit.scrappedAt !== null,
    takenOff: visit.takenOffAt !== null,
  })
