import Link from 'next/link'
import type { ReactNode } from 'react'
import { Tag } from '@/app/_components/tag/tag'
import { ButtonLink } from '@/app/_components/ui/button-link'
import { Phone } from '@/app/_components/ui/phone'
import { When } from '@/app/_components/ui/when'
import type { CounterJob } from '@/lib/use-cases/counter/job-row'
import type { CounterView } from '@/lib/use-cases/counter/see-counter'
import styles from './counter.module.css'
import { PromiseDay } from './promise-day'

type Props = {
  title: string
  jobs: readonly CounterJob[]
  view: CounterView
  /** What stands beside each head: why it is not further, since when it is here, or nothing. */
  tell: 'why' | 'since' | 'nothing'
  handOver?: boolean
  empty: ReactNode
}

/** Jobs under one heading, each with the heads that the heading is about. */
export function JobList({ title, jobs, view, tell, handOver = false, empty }: Props) {
  return (
    <section className="part" aria-label={title}>
      <h2>
        {title} {jobs.length > 0 && <span className="soft">{jobs.length}</span>}
      </h2>
      {jobs.length === 0 ? (
        empty
      ) : (
        <ul className="plain-list">
          {jobs.map((job) => (
            <li key={job.jobId} className={styles.job}>
              <div className="row spread">
                <Link href={`/jobs/${job.number}`} className={styles.jobLink}>
                  <span className={styles.number}>{job.number}</span> {job.customer}
                </Link>
                <PromiseDay on={job.promiseOn} daysLeft={job.daysLeft} urgent={job.urgent} locale={view.locale} />
              </div>
              <div className={tell === 'nothing' ? 'row spread' : styles.rest}>
                <ul className={tell === 'nothing' ? styles.tags : styles.heads}>
                  {job.heads.map((head) => (
                    <li key={head.headId} className="row">
                      <Tag number={head.tag} size="s" href={`/heads/${head.headId}`} />
                      {tell === 'why' && <span>{head.why}</span>}
                      {tell === 'since' && head.since && (
                        <span className="soft">
                          since <When at={head.since} zone={view.timeZone} locale={view.locale} style="day" />
                        </span>
                      )}
                    </li>
                  ))}
                </ul>
                <div className="row spread">
                  <Phone number={job.phone} />
                  {handOver && <ButtonLink href={`/jobs/${job.number}/hand-over`}>Hand over {job.number}</ButtonLink>}
                </div>
              </div>
            </li>
          ))}
        </ul>
      )}
    </section>
  )
}
