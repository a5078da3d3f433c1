'use client'
import { useState } from 'react'
import { Button } from '../ui/button'
import { FileButton } from '../ui/file-button'
import { Notice } from '../ui/notice'
import { TextInput } from '../ui/text-input'
import type { Chosen } from '../form/use-uploads'
import styles from './photo.module.css'
import type { Photos } from './use-photos'

type Props = {
  photos: Photos
  /** Who will read the caption, where that is not only the shop. */
  captionHint?: string
}

/** Take a photo or choose a file; what was taken stands below with its caption until it is saved. */
export function PhotoTray({ photos, captionHint }: Props) {
  return (
    <div className="stack" data-hands-on={photos.chosen.length > 0 ? '' : undefined}>
      <div className="row">
        <FileButton label="Take a photo" accept="image/*" camera onPick={photos.choose} />
        <FileButton label="Choose a file" accept="image/*" multiple onPick={photos.choose} />
      </div>
      {photos.chosen.length > 0 && (
        <ul className={`plain-list ${styles.tray}`}>
          {photos.chosen.map((one) => (
            <li key={one.key}>
              <TakenPhoto taken={one} photos={photos} captionHint={captionHint} />
            </li>
          ))}
        </ul>
      )}
    </div>
  )
}

function TakenPhoto({ taken, photos, captionHint }: { taken: Chosen; photos: Photos; captionHint?: string }) {
  const [shown, setShown] = useState(true)
  const { key, sent } = taken
  return (
    <div className={styles.taken}>
      {shown ? (
        // The browser's own memory holds it: there is nothing for an image service to do.
        <img
          src={taken.preview}
          alt="The photo just taken"
          className={styles.preview}
          onError={() => setShown(false)}
        />
      ) : (
        <p className={styles.noPreview}>This browser cannot show it. It is sent as it is.</p>
      )}
      <div className="stack">
        <TextInput
          label="What it shows"
          hint={captionHint}
          required={false}
          maxLength={200}
          value={taken.caption}
          disabled={sent !== null}
          onChange={(event) => photos.change(key, { caption: event.target.value })}
        />
        {sent === null ? (
          <Button variant="quiet" onClick={() => photos.drop(key)}>
            Remove photo
          </Button>
        ) : (
          <progress className={styles.progress} aria-label="Sending the photo" value={sent} max={1} />
        )}
        {taken.problem !== '' && (
          <Notice kind="stop" title="Photo not saved">
            <p>{taken.problem}</p>
          </Notice>
        )}
      </div>
    </div>
  )
}
