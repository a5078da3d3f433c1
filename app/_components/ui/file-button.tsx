'use client'
import type { ChangeEvent } from 'react'
import button from './button.module.css'
import styles from './file-button.module.css'

type Props = {
  label: string
  /** Kinds of file that the device offers; the server looks for itself. */
  accept: string
  multiple?: boolean
  /** Opens the camera where there is one. */
  camera?: boolean
  onPick: (files: FileList | null) => Promise<void>
}

/** A file input that looks like a button: the label is the target, the input keeps keyboard and screen reader. */
export function FileButton({ label, accept, multiple, camera, onPick }: Props) {
  const pick = (event: ChangeEvent<HTMLInputElement>) => {
    const input = event.currentTarget
    // Emptied after it is read, so that the same file can be chosen again.
    void onPick(input.files).then(() => {
      input.value = ''
    })
  }
  return (
    <label className={`${button.button} ${button.plain ?? ''} ${styles.pick}`}>
      {label}
      <input
        type="file"
        accept={accept}
        capture={camera && 'environment'}
        multiple={multiple}
        className="visually-hidden"
        onChange={pick}
      />
    </label>
  )
}
