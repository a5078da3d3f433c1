import type { ReactNode } from 'react'
import styles from './empty-state.module.css'

/** Nothing here yet: says what that means and what to do next. */
export function EmptyState({ title, children }: { title: ReactNode; children: ReactNode }) {
  return (
    <div className={styles.empty}>
      <p className={styles.title}>{title}</p>
      <div className="stack">{children}</div>
    </div>
  )
}
