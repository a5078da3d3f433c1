import type { ReactNode } from 'react'
import styles from './shell.module.css'

/** The frame of pages without a signed-in person. */
export function PublicShell({ children, narrow = false }: { children: ReactNode; narrow?: boolean }) {
  return (
    <main id="main" className={narrow ? `${styles.main} ${styles.narrow}` : styles.main}>
      {children}
    </main>
  )
}
