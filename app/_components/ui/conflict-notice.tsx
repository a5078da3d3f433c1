'use client'
import { useId, type ReactNode } from 'react'
import { Button } from './button'
import styles from './conflict-notice.module.css'

type Props = {
  /** What both changed: "Job 26-0117". */
  what: ReactNode
  yours: ReactNode
  theirs: ReactNode
  /** Who was first, and when. */
  by?: ReactNode
  onKeepMine: () => void
  onUseTheirs: () => void
  pending?: boolean
}

/** Someone else changed it first: both sides, and the person chooses. */
export function ConflictNotice({ what, yours, theirs, by, onKeepMine, onUseTheirs, pending }: Props) {
  const id = useId()
  return (
    <div role="alert" className={styles.conflict}>
      <p className={styles.title}>{what}: someone else changed this.</p>
      <div className={styles.sides}>
        <section aria-labelledby={`${id}-yours`} className={styles.side}>
          <h3 id={`${id}-yours`}>Yours</h3>
          <div>{yours}</div>
          <Button pending={pending} onClick={onKeepMine}>
            Keep mine
          </Button>
        </section>
        <section aria-labelledby={`${id}-theirs`} className={styles.side}>
          <h3 id={`${id}-theirs`}>Theirs</h3>
          <div>{theirs}</div>
          {by && <p className="soft">{by}</p>}
          <Button pending={pending} onClick={onUseTheirs}>
            Use theirs
          </Button>
        </section>
      </div>
    </div>
  )
}
