import type { ReactNode } from 'react'
import styles from './title-block.module.css'

export type TitleCell = {
  /** A small caption over the value. */
  label: string
  value: ReactNode
  /** Beside or below the value, in words. */
  note?: ReactNode
  /** The answer to what a person asks first: larger than the others. */
  main?: boolean
}

/** The ruled box of a drawing at the head of a page; its first cell names the page. */
export function TitleBlock({ title, cells }: { title: TitleCell; cells: readonly TitleCell[] }) {
  return (
    <div className={styles.block}>
      <div className={`${styles.cell} ${styles.title}`}>
        <p className={styles.label}>{title.label}</p>
        <h1 className={styles.value}>{title.value}</h1>
        {title.note && <div className={styles.note}>{title.note}</div>}
      </div>
      <dl className={styles.cells}>
        {cells.map((cell) => (
          <div key={cell.label} className={cell.main ? `${styles.cell} ${styles.main}` : styles.cell}>
            <dt className={styles.label}>{cell.label}</dt>
            <dd className={styles.value}>
              {cell.value}
              {cell.note && <div className={styles.note}>{cell.note}</div>}
            </dd>
          </div>
        ))}
      </dl>
    </div>
  )
}
