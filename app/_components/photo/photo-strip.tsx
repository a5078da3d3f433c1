'use client'
import { useRouter } from 'next/navigation'
import { useState } from 'react'
import { withdrawPhotoSchema } from '@/lib/schemas/photo'
import type { PhotoView } from '@/lib/use-cases/photos/photo-view'
import { ActionForm } from '../form/action-form'
import { useActionForm } from '../form/use-action-form'
import { Button } from '../ui/button'
import { Dialog } from '../ui/dialog'
import { TextInput } from '../ui/text-input'
import { When } from '../ui/when'
import { withdrawPhotoAction } from './actions'
import styles from './photo.module.css'

type Manner = { readonly timeZone: string; readonly locale: string }
type Props = { photos: readonly PhotoView[]; manner: Manner; label: string }

/** Photos side by side, each with what it is of, who took it and when; a tap shows it large. */
export function PhotoStrip({ photos, manner, label }: Props) {
  const [openId, setOpenId] = useState<string | null>(null)
  const open = photos.find(({ id }) => id === openId)
  if (photos.length === 0) return null
  return (
    <>
      <ul className={styles.strip} aria-label={label}>
        {photos.map((photo) => (
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

function Large({ photo, manner, onGone }: { photo: PhotoView; manner: Manner; onGone: () => void }) {
  const [asking, setAsking] = useState(false)
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
      {photo.mayWithdraw && !asking && (
        <Button variant="quiet" onClick={() => setAsking(true)}>
          Withdraw this photo
        </Button>
      )}
      {asking && <WithdrawForm photoId={photo.id} onGone={onGone} />}
    </>
  )
}

function WithdrawForm({ photoId, onGone }: { photoId: string; onGone: () => void }) {
  const router = useRouter()
  const form = useActionForm(withdrawPhotoSchema, withdrawPhotoAction, {
    defaultValues: { photoId, reason: '' },
    onDone: () => {
      onGone()
      router.refresh()
    },
  })
  return (
    <ActionForm form={form} submitLabel="Withdraw it">
      <TextInput
        label="Why"
        hint="Of another head, say. It is shown to nobody any more; that it was here stays on record."
        required
        {...form.text('reason')}
      />
    </ActionForm>
  )
}
