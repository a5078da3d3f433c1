import type { ReactNode } from 'react'
import styles from './definition-list.module.css'

export type Definition = { label: ReactNode; value: ReactNode; unit?: string; note?: ReactNode }

type Props = {
  items: readonly Definition[]
  /** For what must be read at arm's length. */
  large?: boolean
  /** Beside other things at a desk: more of them in a row, in the size of the text. */
  close?: boolean
}

/** Labels and their figures. */
export function DefinitionList({ items, large = false, close = false }: Props) {
  return (
    <dl className={[styles.list, large && styles.large, close && styles.close].filter(Boolean).join(' ')}>
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
