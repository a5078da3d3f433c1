import type { Actor } from '@/lib/core/access/roles'
import { seeOrderPhotos } from '@/lib/use-cases/photos/see-photos'
import { Tag } from '../tag/tag'
import { AddPhoto } from './add-photo'
import { PhotoStrip } from './photo-strip'

type Props = {
  actor: Actor
  orderId: string
  heads: readonly { readonly visitId: string; readonly tag: string }[]
}

/** The vendor's marks as they are on the heads: the photos of an outside order, a head at a time. */
export async function OrderPhotos({ actor, orderId, heads }: Props) {
  const shown = await seeOrderPhotos(actor, orderId, new Date())
  return (
    <section className="stack part" aria-label="Photos of the vendor’s marks">
      <h2>Photos of the vendor’s marks</h2>
      <ul className="plain-list">
        {heads.map(({ visitId, tag }) => (
          <li key={visitId} className="stack">
            <div className="row">
              <Tag number={tag} />
            </div>
            <PhotoStrip
              photos={shown.photos.filter((photo) => photo.visitId === visitId)}
              manner={shown}
              label={`Photos of ${tag}`}
            />
            {shown.mayAdd && <AddPhoto to={{ visitId, stepId: 'arrival-count', orderId }} />}
          </li>
        ))}
      </ul>
    </section>
  )
}
