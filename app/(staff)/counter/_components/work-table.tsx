import { Link } from '@/app/_components/ui/link'
import { Tag } from '@/app/_components/tag/tag'
import { Day } from '@/app/_components/ui/day'
import { Money } from '@/app/_components/ui/money'
import { Phone } from '@/app/_components/ui/phone'
import { Sign } from '@/app/_components/ui/sign'
import type { WorkHead, WorkJob } from '@/lib/use-cases/counter/job-row'
import type { CounterView } from '@/lib/use-cases/counter/see-counter'
import { PromiseDay } from './promise-day'
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
export function WorkTable({ view, withPrices }: { view: CounterView; withPrices: boolean }) {
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
        {view.jobs.map((job) => (
          <JobRow key={job.jobId} job={job} view={view} />
        ))}
      </tbody>
    </table>
  )
}

function JobRow({ job, view: { locale, currency } }: { job: WorkJob; view: CounterView }) {
  return (
    <tr role="row">
      <th scope="row" role="rowheader" className={styles.job}>
        <Link href={`/jobs/${job.number}`} className={styles.number}>
          {job.number}
        </Link>
      </th>
      <td role="cell" className={styles.customer}>
        {job.customer}
        <span className={styles.phone}>
          <Phone number={job.phone} />
        </span>
      </td>
      <td role="cell" className={styles.tags}>
        <span className={styles.tagRow}>
          {job.heads.map((head) => (
            <Tag key={head.headId} number={head.tag} size="s" href={`/heads/${head.headId}`} />
          ))}
        </span>
      </td>
      <td role="cell" className={styles.next}>
        <Next heads={job.heads} />
      </td>
      <td role="cell" className={styles.expected}>
        <Expected job={job} locale={locale} />
      </td>
      <td role="cell" className={styles.promised}>
        <span className={styles.word}>Promised </span>
        <PromiseDay
          on={job.promiseOn}
          daysLeft={job.finish === null ? null : job.daysLeft}
          urgent={job.urgent}
          locale={locale}
          short
        />
      </td>
      {job.dueMinor !== null && (
        <td role="cell" className={styles.owed}>
          <span className={styles.word}>Owed </span>
          {job.dueMinor === 0 ? '–' : <Money minor={job.dueMinor} currency={currency} locale={locale} />}
        </td>
      )}
    </tr>
  )
}

/** Heads of one job that are in one state are said once. */
function Next({ heads }: { heads: readonly WorkHead[] }) {
  const told = [...new Map(heads.map((head) => [`${head.next} ${head.waits}`, head])).values()]
  return told.map(({ headId, next, waits, whereabouts, tag }) => (
    <span key={headId} className={styles.state} title={`${next} ${waits}`}>
      {told.length > 1 && <span className="soft">{tag}: </span>}
      {whereabouts === 'held' ? <strong className={styles.held}>{next}</strong> : next}
      {waits !== '' && <span className="soft"> {waits}</span>}
    </span>
  ))
}

function Expected({ job, locale }: { job: WorkJob; locale: string }) {
  if (job.finish === null) return <>ready</>
  const { middleOn, nineOfTenOn, why, from } = job.finish
  const said = [why, from].filter(Boolean).join('; ')
  return (
    <span title={said}>
      <span className={styles.word}>Expected </span>
      {job.atRisk ? (
        <strong>
          <Sign kind="caution" />
          <span className="visually-hidden">at risk: </span> <Day on={middleOn} locale={locale} />
        </strong>
      ) : (
        <Day on={middleOn} locale={locale} />
      )}{' '}
      <span className="soft nowrap">
        by <Day on={nineOfTenOn} locale={locale} />
      </span>
      <span className="visually-hidden">; {said}</span>
    </span>
  )
}
