'use client'
import styles from './busy.module.css'
import { useDelayed } from './use-delayed'

/** Says that work goes on, once it has taken half a second. Leave it mounted: it is announced when it appears. */
export function Busy({ when, label = 'Working…' }: { when: boolean; label?: string }) {
  const late = useDelayed(when)
  return (
    <div role="status" className={late ? styles.busy : undefined}>
      {late && (
        <>
          <progress className={styles.bar} aria-label={label} />
          <span>{label}</span>
        </>
      )}
    </div>
  )
}
