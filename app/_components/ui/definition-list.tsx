import type { ReactNode } from 'react'
import styles from './definition-list.module.css'

export type Definition = { label: ReactNode; value: ReactNode; unit?: string; note?: ReactNode }

/** Labels and their figures. `large` is for what must be read at arm's length. */
export function DefinitionList({ items, large = false }: { items: readonly Definition[]; large?: boolean }) {
  return (
    <dl className={large ? `${styles.list} ${styles.large}` : styles.list}>
      {items.map((item, at) => (
        <div key={at} className={styles.item}>
          <dt>{item.label}</dt>
          <dd>
            <span className={styles.value}>
              {item.value}
              {item.unit && <span className={styles.unit}> {item.unit}</span>}
            </span>
            {item.note && <span className={styles.note}>{item.note}</span>}
          </dd>
        </div>
      ))}
    </dl>
  )
}
