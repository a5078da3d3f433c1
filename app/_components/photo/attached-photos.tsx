'use client'
import { useState } from 'react'
import { Button } from '../ui/button'
import { Notice } from '../ui/notice'
import { PhotoTray } from './photo-tray'
import { usePhotos, type PhotoPlace, type Photos } from './use-photos'

export type Attached = {
  readonly photos: Photos
  /** True once what they belong to is kept and they are on their way, or did not arrive. */
  readonly following: boolean
  /** To be called once what they belong to is kept: sends them after it, then goes on. */
  readonly follow: (to: PhotoPlace) => Promise<void>
  readonly again: () => Promise<void>
}

/** Photos of something that is still to be reported: they follow once it is, and what it is is not reported twice. */
export function useAttached(onDone: () => void): Attached {
  const photos = usePhotos()
  const [to, setTo] = useState<PhotoPlace | null>(null)

  async function follow(place: PhotoPlace) {
    if (photos.isEmpty()) return onDone()
    setTo(place)
    if ((await photos.send(place)) === 0) onDone()
  }

  return { photos, following: to !== null, follow, again: async () => void (to && (await follow(to))) }
}

type Props = { attached: Attached; kept: string; onLeave: () => void }

/** What was reported is kept; this is how far its photos are. */
export function FollowingPhotos({ attached, kept, onLeave }: Props) {
  const { photos, again } = attached
  return (
    <div className="stack">
      <Notice title={kept}>
        <p>{photos.pending ? 'Its photo is being sent.' : 'Its photo is not saved yet. It is still here.'}</p>
      </Notice>
      <PhotoTray photos={photos} />
      <div className="row">
        <Button variant="main" pending={photos.pending} pendingLabel="Sending…" onClick={() => void again()}>
          Try again
        </Button>
        {!photos.pending && (
          <Button variant="quiet" onClick={onLeave}>
            Continue without it
          </Button>
        )}
      </div>
    </div>
  )
}
