import type { CounterView } from '@/lib/use-cases/counter/see-counter'
import { saidJob } from './said-job'
import { WorkRows } from './work-rows'
import styles from './counter.module.css'

const columns = [
  { label: 'Job', width: styles.jobColumn },
  { label: 'Customer', width: styles.customerColumn },
  { label: 'Heads', width: styles.tagsColumn },
  { label: 'Where, and what next', width: undefined },
  { label: 'Expected', width: styles.expectedColumn },
  { label: 'Promised', width: styles.promisedColumn },
] as const

/** Open jobs, a row each at a desk and a card of a few lines on a phone. */
export async function WorkTable({ view, withPrices }: { view: CounterView; withPrices: boolean }) {
  return (
    <table className={styles.work} role="table">
      <caption className="visually-hidden">Work in hand</caption>
      <thead role="rowgroup">
        <tr role="row">
          {columns.map(({ label, width }) => (
            <th key={label} scope="col" role="columnheader" className={width}>
              {label}
            </th>
          ))}
          {withPrices && (
            <th scope="col" role="columnheader" className={`${styles.owed} ${styles.owedColumn}`}>
              Owed
            </th>
          )}
        </tr>
      </thead>
      <tbody role="rowgroup">
        <WorkRows jobs={await Promise.all(view.jobs.map((job) => saidJob(job, view)))} />
      </tbody>
    </table>
  )
}
