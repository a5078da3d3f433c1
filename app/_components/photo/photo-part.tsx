import type { Shown } from '@/lib/use-cases/photos/see-photos'
import { AddPhoto } from './add-photo'
import { PhotoStrip } from './photo-strip'

type Props = {
  /** Those of this place alone. */
  photos: Shown['photos']
  shown: Shown
  /** Where a new one belongs; null: none can be added here. */
  to: Parameters<typeof AddPhoto>[0]['to'] | null
  label?: string
}

/** The photos of one place, and the way to another. */
export function PhotoPart({ photos, shown, to, label = 'Photos' }: Props) {
  const adds = to !== null && shown.mayAdd
  if (photos.length === 0 && !adds) return null
  return (
    <section className="stack part" aria-label={label}>
      <h2>{label}</h2>
      <PhotoStrip photos={photos} manner={shown} label={label} />
      {adds && <AddPhoto to={to} />}
    </section>
  )
}
