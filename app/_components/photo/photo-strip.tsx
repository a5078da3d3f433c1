'use client'
import { useState, type ComponentType } from 'react'
import type { PhotoView } from '@/lib/use-cases/photos/photo-view'
import { Button } from '../ui/button'
import { Dialog } from '../ui/dialog'
import { NotFetched, useLazyModule } from '../ui/use-lazy-module'
import { When } from '../ui/when'
import styles from './photo.module.css'

type Manner = { readonly timeZone: string; readonly locale: string }
type Props = { photos: readonly PhotoView[]; manner: Manner; label: string }

/** Photos that are shown before the rest is asked for. */
const atOnce = 24

/** Photos side by side, each with what it is of, who took it and when; a tap shows it large. */
export function PhotoStrip({ photos, manner, label }: Props) {
  const [openId, setOpenId] = useState<string | null>(null)
  const [shown, setShown] = useState(atOnce)
  const open = photos.find(({ id }) => id === openId)
  if (photos.length === 0) return null
  return (
    <>
      <ul className={styles.strip} aria-label={label}>
        {photos.slice(0, shown).map((photo) => (
          <li key={photo.id}>
            <figure className={styles.figure}>
              <button type="button" className={styles.open} onClick={() => setOpenId(photo.id)}>
                <img
                  src={`/api/photos/${photo.id}?size=small`}
                  alt={`Show large: ${titleOf(photo)}`}
                  width={photo.widthPx}
                  height={photo.heightPx}
                  loading="lazy"
                />
              </button>
              <figcaption>
                {photo.caption !== '' && <span className={styles.caption}>{photo.caption}</span>}
                <Took photo={photo} manner={manner} />
              </figcaption>
            </figure>
          </li>
        ))}
      </ul>
      {photos.length > shown && (
        <div>
          <Button onClick={() => setShown(shown + atOnce)}>Show more photos ({photos.length - shown})</Button>
        </div>
      )}
      <Dialog open={open !== undefined} onClose={() => setOpenId(null)} title={open ? titleOf(open) : ''}>
        {open && <Large photo={open} manner={manner} onGone={() => setOpenId(null)} />}
      </Dialog>
    </>
  )
}

const titleOf = ({ caption, of }: PhotoView): string => (caption === '' ? of : caption)

const Took = ({ photo, manner }: { photo: PhotoView; manner: Manner }) => (
  <span className="soft">
    {photo.of}. {photo.by}, <When at={photo.at} zone={manner.timeZone} locale={manner.locale} />
  </span>
)

const loadForm = () => import('./withdraw-form')

function Large({ photo, manner, onGone }: { photo: PhotoView; manner: Manner; onGone: () => void }) {
  const [Form, setForm] = useState<ComponentType<{ photoId: string; onGone: () => void }> | null>(null)
  const { load, pending, failed } = useLazyModule(loadForm)
  return (
    <>
      <img
        src={`/api/photos/${photo.id}`}
        alt={titleOf(photo)}
        width={photo.widthPx}
        height={photo.heightPx}
        className={styles.large}
      />
      <p>
        <Took photo={photo} manner={manner} />
      </p>
      {photo.mayWithdraw && Form === null && (
        <Button
          variant="quiet"
          pending={pending}
          onClick={() => load(({ WithdrawForm }) => setForm(() => WithdrawForm))}
        >
          Withdraw this photo
        </Button>
      )}
      {failed && <NotFetched />}
      {Form && <Form photoId={photo.id} onGone={onGone} />}
    </>
  )
}
