'use client'
import { useId, type ReactNode } from 'react'
import { Button } from './button'
import styles from './conflict-notice.module.css'

type Props = {
  /** What both changed: "Promise date of job 26-0117". */
  what: ReactNode
  yours: ReactNode
  theirs: ReactNode
  /** Who was first, and when. */
  by?: ReactNode
  onKeepYours: () => void
  onTakeTheirs: () => void
  pending?: boolean
}

/** Somebody else was first. Shows both sides and asks; nothing is decided for the person. */
export function ConflictNotice({ what, yours, theirs, by, onKeepYours, onTakeTheirs, pending }: Props) {
  const id = useId()
  return (
    <div role="alert" className={styles.conflict}>
      <p className={styles.title}>{what}: changed elsewhere while you were at it. Which one counts?</p>
      <div className={styles.sides}>
        <section aria-labelledby={`${id}-yours`} className={styles.side}>
          <h3 id={`${id}-yours`}>Yours</h3>
          <div>{yours}</div>
          <Button pending={pending} onClick={onKeepYours}>
            Keep yours
          </Button>
        </section>
        <section aria-labelledby={`${id}-theirs`} className={styles.side}>
          <h3 id={`${id}-theirs`}>Theirs</h3>
          <div>{theirs}</div>
          {by && <p className="soft">{by}</p>}
          <Button pending={pending} onClick={onTakeTheirs}>
            Take theirs
          </Button>
        </section>
      </div>
    </div>
  )
}
