'use client'
import { use, useEffect, useState } from 'react'
import { Button } from '../ui/button'
import { PhotosFirstContext } from './photos-first'
import { PhotoTray } from './photo-tray'
import { usePhotos, type PhotoPlace } from './use-photos'

type Props = { to: PhotoPlace; onKept?: () => void }

/** Photos by themselves: taken, looked at, saved. */
export function AddPhoto({ to, onKept }: Props) {
  const photos = usePhotos()
  const [said, setSaid] = useState('')
  const { length } = photos.chosen
  const again = photos.chosen.some(({ problem }) => problem !== '')

  async function keep(): Promise<boolean> {
    setSaid('')
    const left = await photos.send(to)
    if (left > 0) return false
    setSaid(length === 1 ? 'Photo saved.' : 'Photos saved.')
    onKept?.()
    return true
  }

  // The deed of the screen does not go without what was chosen here.
  const first = use(PhotosFirstContext)
  useEffect(() => (length > 0 ? first?.add(keep) : undefined))

  return (
    <div className="stack">
      <PhotoTray photos={photos} />
      {length > 0 && (
        <Button pending={photos.pending} pendingLabel="Sending…" onClick={() => void keep()}>
          {again ? 'Try again' : length === 1 ? 'Save photo' : `Save ${length} photos`}
        </Button>
      )}
      <p role="status">{said}</p>
    </div>
  )
}
