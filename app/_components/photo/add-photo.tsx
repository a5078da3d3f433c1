'use client'
import { useRouter } from 'next/navigation'
import { useState } from 'react'
import { Button } from '../ui/button'
import { PhotoTray } from './photo-tray'
import type { PhotoWords } from './send-photo'
import { usePhotos } from './use-photos'

type Props = { to: Omit<PhotoWords, 'caption'>; onKept?: () => void }

/** Photos by themselves: taken, looked at, kept. */
export function AddPhoto({ to, onKept }: Props) {
  const photos = usePhotos()
  const router = useRouter()
  const [said, setSaid] = useState('')
  const { length } = photos.taken
  const again = photos.taken.some(({ problem }) => problem !== '')

  async function keep() {
    setSaid('')
    const left = await photos.send(to)
    if (left < length) router.refresh()
    if (left > 0) return
    setSaid(length === 1 ? 'The photo is kept.' : 'The photos are kept.')
    onKept?.()
  }

  return (
    <div className="stack">
      <PhotoTray photos={photos} />
      {length > 0 && (
        <Button pending={photos.pending} pendingLabel="Sending…" onClick={() => void keep()}>
          {again ? 'Try again' : length === 1 ? 'Keep the photo' : `Keep ${length} photos`}
        </Button>
      )}
      <p role="status">{said}</p>
    </div>
  )
}
