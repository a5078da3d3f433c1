'use client'
import { useState, type ChangeEvent } from 'react'
import { Button } from '../ui/button'
import button from '../ui/button.module.css'
import { Notice } from '../ui/notice'
import { TextInput } from '../ui/text-input'
import styles from './photo.module.css'
import type { Photos, Taken } from './use-photos'

type Props = {
  photos: Photos
  /** Who will read the caption, where that is not only the shop. */
  captionHint?: string
}

/** Take a photo or choose a file; what was taken stands below with its caption until it is kept. */
export function PhotoTray({ photos, captionHint }: Props) {
  return (
    <div className="stack" data-hands-on={photos.taken.length > 0 ? '' : undefined}>
      <div className="row">
        <PickButton label="Take a photo" camera photos={photos} />
        <PickButton label="Choose a file" photos={photos} />
      </div>
      {photos.taken.length > 0 && (
        <ul className={`plain-list ${styles.tray}`}>
          {photos.taken.map((one) => (
            <li key={one.key}>
              <TakenPhoto taken={one} photos={photos} captionHint={captionHint} />
            </li>
          ))}
        </ul>
      )}
    </div>
  )
}

/** A file input that looks like a button: the label is the target, the input keeps keyboard and screen reader. */
function PickButton({ label, camera, photos }: { label: string; camera?: true; photos: Photos }) {
  const pick = (event: ChangeEvent<HTMLInputElement>) => {
    const input = event.currentTarget
    // Emptied after it is read, so that the same file can be chosen again.
    void photos.take(input.files).then(() => {
      input.value = ''
    })
  }
  return (
    <label className={`${button.button} ${button.plain ?? ''} ${styles.pick}`}>
      {label}
      <input
        type="file"
        accept="image/*"
        capture={camera && 'environment'}
        multiple={!camera}
        className="visually-hidden"
        onChange={pick}
      />
    </label>
  )
}

function TakenPhoto({ taken, photos, captionHint }: { taken: Taken; photos: Photos; captionHint?: string }) {
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
          onChange={(event) => photos.caption(key, event.target.value)}
        />
        {sent === null ? (
          <Button variant="quiet" onClick={() => photos.drop(key)}>
            Leave it out
          </Button>
        ) : (
          <progress className={styles.progress} aria-label="Sending the photo" value={sent} max={1} />
        )}
        {taken.problem !== '' && (
          <Notice kind="stop" title="The photo is not kept yet">
            <p>{taken.problem}</p>
          </Notice>
        )}
      </div>
    </div>
  )
}
