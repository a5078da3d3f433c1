import styles from './loading.module.css'

/** One line in the place of a part that is still being read; it shows after half a second. */
export function Loading({ what }: { what?: string }) {
  return (
    <p role="status" className={styles.loading}>
      Loading{what && ` ${what}`}…
    </p>
  )
}
