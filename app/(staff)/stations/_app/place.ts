import { stations, type Station, type StepId, type StepKey } from '@/lib/core/route/step-ids'

/** What an address of the station app shows; null: an address of none of its places. */
export type Place =
  | { readonly is: 'rack' }
  | { readonly is: 'queue'; readonly station: Station; readonly page: number }
  | { readonly is: 'step'; readonly station: Station; readonly visitId: string; readonly key: StepKey }

export function placeOf(address: string): Place | null {
  const { pathname, searchParams } = new URL(address, 'http://here')
  const [, root, name, heads, visitId, ...more] = pathname.split('/')
  if (root !== 'stations' || more.length > 0) return null
  if (name === undefined || name === '') return { is: 'rack' }
  const station = stations.find((one) => one === name)
  if (!station) return null
  if (heads === undefined) return { is: 'queue', station, page: Math.max(1, Number(searchParams.get('page')) || 1) }
  const stepId = searchParams.get('step')
  if (heads !== 'heads' || !visitId || !stepId) return null
  const key = {
    stepId: stepId as StepId,
    occurrence: searchParams.get('run') ?? '',
    orderId: searchParams.get('order'),
  }
  return { is: 'step', station, visitId, key }
}
