import { PhotoPart } from '@/app/_components/photo/photo-part'
import type { RouteStep } from '@/lib/core/route/types'
import type { HeadView } from '@/lib/use-cases/heads/see-head'
import type { Shown } from '@/lib/use-cases/photos/see-photos'

const left: readonly string[] = ['on order', 'handed over', 'returned as is', 'scrapped']

/** Every photo of this head: the newest visit first, in the order of the steps. */
export function HeadPhotos({ head, shown }: { head: HeadView; shown: Shown }) {
  return head.visits.map(({ visitId, jobNumber, whereabouts, route }, at) => (
    <PhotoPart
      key={visitId}
      label={at === 0 ? 'Photos' : `Photos, job ${jobNumber}`}
      photos={shown.photos
        .filter((photo) => photo.visitId === visitId)
        .toSorted((a, b) => placeOf(route, a) - placeOf(route, b))}
      shown={shown}
      to={at > 0 || left.includes(whereabouts) ? null : { visitId, stepId: '' }}
    />
  ))
}

const placeOf = (route: readonly RouteStep[], photo: { readonly stepId: string }): number =>
  route.findIndex(({ stepId }) => stepId === photo.stepId)
