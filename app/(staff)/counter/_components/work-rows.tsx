'use client'
import { Tag } from '@/app/_components/tag/tag'
import { SaidDay } from '@/app/_components/ui/said-day'
import { Link } from '@/app/_components/ui/link'
import { PhoneLink } from '@/app/_components/ui/phone-link'
import { Sign } from '@/app/_components/ui/sign'
import { PromiseDay } from './promise-day'
import type { SaidJob } from './said-job'
import styles from './counter.module.css'

/** Drawn from their figures: as elements, sixty rows would come in five times the bytes with the page, and at each refresh. */
export function WorkRows({ jobs }: { jobs: readonly SaidJob[] }) {
  return jobs.map((job) => <Row key={job.jobId} job={job} />)
}

function Row({ job }: { job: SaidJob }) {
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
          <PhoneLink number={job.phone} dial={job.dial} />
        </span>
      </td>
      <td role="cell" className={styles.tags}>
        <span className={styles.tagRow}>
          {job.heads.map(({ headId, tag }) => (
            <Tag key={headId} number={tag} size="s" href={`/heads/${headId}`} />
          ))}
        </span>
      </td>
      <td role="cell" className={styles.next}>
        {job.states.map((state) => (
          <State key={`${state.next} ${state.waits}`} {...state} />
        ))}
      </td>
      <td role="cell" className={styles.expected}>
        {job.expected ? <Expected {...job.expected} /> : 'ready'}
      </td>
      <td role="cell" className={styles.promised}>
        <span className={styles.word}>Promised </span>
        <PromiseDay promised={job.promised} daysLeft={job.daysLeft} urgent={job.urgent} />
      </td>
      {job.owed && (
        <td role="cell" className={styles.owed}>
          <span className={styles.word}>Owed </span>
          {job.owed.minor === 0 ? '–' : <data value={job.owed.minor}>{job.owed.said}</data>}
        </td>
      )}
    </tr>
  )
}

function State({ tag, next, waits, held }: SaidJob['states'][number]) {
  return (
    <span className={styles.state} title={`${next} ${waits}`}>
      {tag !== '' && <span className="soft">{tag}: </span>}
      {held ? <strong className={styles.held}>{next}</strong> : next}
      {waits !== '' && <span className="soft"> {waits}</span>}
    </span>
  )
}

function Expected({ middle, nineOfTen, why, atRisk }: NonNullable<SaidJob['expected']>) {
  return (
    <span title={why}>
      <span className={styles.word}>Expected </span>
      {atRisk ? (
        <strong>
          <Sign kind="caution" />
          <span className="visually-hidden">at risk: </span> <SaidDay {...middle} />
        </strong>
      ) : (
        <SaidDay {...middle} />
      )}{' '}
      <span className="soft nowrap">
        by <SaidDay {...nineOfTen} />
      </span>
      <span className="visually-hidden">; {why}</span>
    </span>
  )
}
