import { Link } from '@/app/_components/ui/link'
import type { WorkFilter } from '@/lib/use-cases/counter/work-filters'
import styles from './counter.module.css'

const labels: Readonly<Record<WorkFilter, string>> = {
  all: 'All',
  due: 'Due this week',
  risk: 'At risk',
  away: 'Away',
  answer: 'Waiting for an answer',
  ready: 'Ready',
  uncollected: 'Uncollected over 14 days',
}

type Props = {
  /** Null: on the list of the unpaid. */
  chosen: WorkFilter | null
  /** Null: not counted on this page. */
  counts: Readonly<Record<WorkFilter, number>> | null
  withPrices: boolean
}

/** Which jobs are shown: each filter is an address. */
export function WorkFilterLinks({ chosen, counts, withPrices }: Props) {
  return (
    <nav aria-label="Which jobs" className={`${styles.filters} no-print`}>
      {(Object.keys(labels) as WorkFilter[]).map((filter) => (
        <Link
          key={filter}
          href={filter === 'all' ? '/counter' : `/counter?show=${filter}`}
          aria-current={filter === chosen ? 'page' : undefined}
          className={styles.filter}
        >
          {labels[filter]}
          {counts && <span className={styles.count}> {counts[filter]}</span>}
        </Link>
      ))}
      {withPrices && (
        <Link href="/counter/unpaid" aria-current={chosen === null ? 'page' : undefined} className={styles.filter}>
          Unpaid
        </Link>
      )}
    </nav>
  )
}
