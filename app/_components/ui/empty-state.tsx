import type { ReactNode } from 'react'
import styles from './empty-state.module.css'

/** An empty list, in one line: that it is empty, and what to do. */
export function EmptyState({ title, children }: { title: string; children?: ReactNode }) {
  return (
    <div className={styles.empty}>
      <strong>{title.replace(/\.$/, '')}.</strong> {children}
    </div>
  )
}
