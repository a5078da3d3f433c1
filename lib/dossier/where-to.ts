import { RefusedError, type Refusal } from '@/lib/core/errors'
import type { Fix, Place } from '@/lib/core/route/fixes'
import { sameKey } from '@/lib/core/route/keys'
import type { Missing, RouteStep } from '@/lib/core/route/types'
import type { StepKey } from '@/lib/core/route/step-ids'
import type { VisitRecord } from '@/lib/data/visit-records'
import { inTheWayText } from '@/lib/words/ticks'

type Visit = Pick<VisitRecord, 'id' | 'headId' | 'pairId'> & { readonly job: { readonly number: string } }
type Found = { readonly visit: Visit; readonly route: readonly RouteStep[] }

/** The one place where what stands in the way becomes an address. */
export function hrefOf(visit: Visit, place: Place): string {
  switch (place.kind) {
    case 'step':
      return `/stations/${place.station}/heads/${visit.id}?${stepQuery(place.step)}`
    case 'order':
      return `/away/${place.orderId}`
    case 'plan':
      return `/jobs/${visit.job.number}/plan/${visit.pairId}`
    case 'parts':
      return '/away'
    case 'head':
      return `/heads/${visit.headId}`
  }
}

function stepQuery({ stepId, occurrence, orderId }: StepKey): string {
  const query = new URLSearchParams({ step: stepId })
  if (occurrence !== '') query.set('run', occurrence)
  if (orderId !== null) query.set('order', orderId)
  return query.toString()
}

/** Where a gap is closed: the step at its station, or the head's own page for a decision. */
export function hrefOfGap({ visit, route }: Found, { what, step }: Missing): string {
  if (what === 'hold' || what === 'finding') return hrefOf(visit, { kind: 'head' })
  const station = route.find((one) => sameKey(one, step))?.station ?? 'measuring-bench'
  return hrefOf(visit, { kind: 'step', step, station })
}

/** The refusal thrown with the ways to what stands in the way. */
export function refuseWithFixes(refusal: Refusal, visit: Visit, fixes: readonly Fix[]): never {
  const gaps = fixes.map(({ what, place }) => ({ message: inTheWayText(what), href: hrefOf(visit, place) }))
  throw new RefusedError({ ...refusal, gaps })
}
