'use client'
import { TextInput } from '../ui/text-input'
import styles from './keypad.module.css'

type Props = {
  label: string
  why: string
  error?: string
  onWhy: (why: string) => void
  onTake: () => void
}

/** In place of a figure: the reason why there is none. */
export function NotTakenCell({ label, why, error, onWhy, onTake }: Props) {
  return (
    <div className={styles.cellAndSwitch}>
      <div className={styles.cell}>
        <TextInput
          label={`${label}, not taken: why`}
          value={why}
          error={error}
          // The cell has just turned into this; the hand goes on where it was.
          autoFocus={why === ''}
          onChange={(event) => onWhy(event.target.value)}
        />
      </div>
      <button type="button" className={styles.switch} aria-label={`Take it: ${label}`} onClick={onTake}>
        Take it
      </button>
    </div>
  )
}
