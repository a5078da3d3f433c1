import type { Hit, HeadHit, JobHit } from '@/lib/use-cases/find/hits'
import { Tag } from '../tag/tag'
import { Day } from '../ui/day'
import styles from './find-box.module.css'

/** One thing found, in one line: to stand inside a link. Without the shop's locale the promise is left out. */
export function HitLine({ hit, locale = '' }: { hit: Hit; locale?: string }) {
  switch (hit.kind) {
    case 'job':
      return <JobLine job={hit} locale={locale} />
    case 'head':
      return <HeadLine head={hit} locale={locale} />
    case 'customer':
      return (
        <span className={styles.line}>
          <strong>{hit.name}</strong>
          <span className="nowrap">{hit.phone}</span>
          <span className="soft">customer</span>
        </span>
      )
  }
}

function JobLine({ job, locale }: { job: JobHit; locale: string }) {
  return (
    <span className={styles.line}>
      <span className={styles.number}>
        <span className="visually-hidden">job </span>
        {job.number}
      </span>
      <span>{job.customer}</span>
      <span className="nowrap">{job.phone}</span>
      <span className="soft">{[job.tags.join(', '), job.whereabouts.join(', ')].filter(Boolean).join(' · ')}</span>
      <Promise on={job.promiseOn} where={job.whereabouts} locale={locale} />
    </span>
  )
}

function HeadLine({ head, locale }: { head: HeadHit; locale: string }) {
  const marks = [head.stamp, head.marks, head.casting].filter(Boolean).join(', ')
  const last = [head.jobNumber && `job ${head.jobNumber}`, head.customer, head.whereabouts].filter(Boolean).join(', ')
  return (
    <span className={styles.line}>
      {head.tag !== '' && <Tag number={head.tag} size="s" />}
      {!head.worn && <span className="soft">{head.tag === '' ? 'no tag yet' : 'tag taken off'}</span>}
      <span>{marks}</span>
      <span className="soft">{last}</span>
      <Promise on={head.promiseOn} where={head.whereabouts === null ? [] : [head.whereabouts]} locale={locale} />
    </span>
  )
}

const left = ['handed over', 'returned as is', 'scrapped', 'taken off']

/** What has left is promised no more. */
function Promise({ on, where, locale }: { on: string | null; where: readonly string[]; locale: string }) {
  if (on === null || locale === '' || where.every((one) => left.includes(one))) return null
  return (
    <span className="soft">
      promised <Day on={on} locale={locale} />
    </span>
  )
}
