import { Link } from '@/app/_components/ui/link'
import type { ReactNode } from 'react'
import { Tag } from '@/app/_components/tag/tag'
import { Day } from '@/app/_components/ui/day'
import { Phone } from '@/app/_components/ui/phone'
import { When } from '@/app/_components/ui/when'
import { daysText } from '@/lib/core/shop/when-words'
import type { CounterView } from '@/lib/use-cases/counter/see-counter'
import { FindingList, HowFar } from '../findings/_components/finding-list'
import styles from './counter.module.css'

type May = { readonly ask: boolean; readonly handOver: boolean; readonly release: boolean }
type Props = { view: CounterView; may: May }

/** So many lines of one kind; the rest is under its filter. */
const most = 4

/** What needs a deed now, one line each with its button; nothing when there is none. */
export function NeedsYou({ view, may }: Props) {
  const kinds = [answers(view, may), atRisk(view), supply(view), toRelease(view, may), ready(view, may)]
  const lines = kinds.flatMap(({ lines: all, rest }) => [
    ...all.slice(0, most),
    ...(all.length > most ? [<More key={rest.href} count={all.length - most} {...rest} />] : []),
  ])
  return (
    <>
      {lines.length > 0 && (
        <section aria-labelledby="needs-you" className={`${styles.needs} no-print`}>
          <h2 id="needs-you">Needs you</h2>
          <ul className={styles.deeds}>{lines}</ul>
        </section>
      )}
      {view.answeredByLink.length > 0 && (
        <section aria-labelledby="by-link" className="no-print">
          <h2 id="by-link">Answered on their links</h2>
          <FindingList
            tags
            findings={view.answeredByLink}
            timeZone={view.timeZone}
            locale={view.locale}
            mayAsk={may.ask}
          />
        </section>
      )}
    </>
  )
}

type Kind = { readonly lines: readonly ReactNode[]; readonly rest: { readonly href: string; readonly label: string } }

function Line({ what, children, deed }: { what: ReactNode; children: ReactNode; deed: ReactNode }) {
  return (
    <li className={styles.deed}>
      {what}
      <span className={styles.why}>{children}</span>
      <span className={styles.act}>{deed}</span>
    </li>
  )
}

const More = ({ count, href, label }: { count: number; href: string; label: string }) => (
  <li className={styles.deed}>
    <Link href={href}>
      {count} more {label}
    </Link>
  </li>
)

const JobLink = ({ number }: { number: string }) => (
  <Link href={`/jobs/${number}`} className={styles.number}>
    {number}
  </Link>
)

function answers({ answers: open, timeZone, locale }: CounterView, may: May): Kind {
  return {
    rest: { href: '/counter?show=answer', label: 'waiting for an answer' },
    lines: open.map((finding) => (
      <Line
        key={finding.id}
        what={<Tag number={finding.tag} size="s" href={`/heads/${finding.headId}`} />}
        deed={
          <>
            <Phone number={finding.phone} />
            {may.ask ? (
              <Link href={`/counter/findings/${finding.id}`}>
                {finding.askedAt === null ? 'Ask' : 'Enter answer'}
                <span className="visually-hidden"> for {finding.tag}</span>
              </Link>
            ) : (
              <JobLink number={finding.jobNumber} />
            )}
          </>
        }
      >
        {may.ask ? <Link href={`/counter/findings/${finding.id}`}>{finding.what}</Link> : finding.what}{' '}
        <span className="soft">
          {finding.customer}, <HowFar finding={finding} timeZone={timeZone} locale={locale} />
        </span>
      </Line>
    )),
  }
}

function atRisk({ atRisk: jobs, locale }: CounterView): Kind {
  return {
    rest: { href: '/counter?show=risk', label: 'at risk' },
    lines: jobs.map((job) => (
      <Line
        key={`risk ${job.jobId}`}
        what={<JobLink number={job.number} />}
        deed={
          <>
            <Phone number={job.phone} />
            <Link href={`/jobs/${job.number}#messages`}>
              Tell<span className="visually-hidden"> the customer of {job.number}</span>
            </Link>
          </>
        }
      >
        {job.customer}, promised {job.promiseOn && <Day on={job.promiseOn} locale={locale} />}, 9 of 10 by{' '}
        {job.finish && <Day on={job.finish.nineOfTenOn} locale={locale} />}{' '}
        <span className="soft">{job.finish?.why}</span>
      </Line>
    )),
  }
}

function supply({ arriving, locale }: CounterView): Kind {
  return {
    rest: { href: '/away', label: 'on order' },
    lines: arriving.map((order) => (
      <Line
        key={order.orderId}
        what={
          <Link href={`/away/supply/${order.orderId}`} className={styles.number}>
            {order.number}
          </Link>
        }
        deed={
          <Link href={`/away/supply/${order.orderId}`}>
            Receive<span className="visually-hidden"> {order.number}</span>
          </Link>
        }
      >
        {order.vendor}: {order.daysLate > 0 ? `${daysText(order.daysLate)} late` : 'due today'},{' '}
        {order.lines.map(({ what }) => what).join(', ')}{' '}
        {order.holdsUp && (
          <span className="soft">
            for the promise of <Day on={order.holdsUp} locale={locale} />
          </span>
        )}
      </Line>
    )),
  }
}

function toRelease({ toRelease: jobs, timeZone, locale }: CounterView, may: May): Kind {
  return {
    rest: { href: '/counter', label: 'to be released' },
    lines: jobs.flatMap((job) =>
      job.heads
        .filter(({ whereabouts }) => whereabouts === 'finished')
        .map((head) => (
          <Line
            key={`release ${head.headId}`}
            what={<Tag number={head.tag} size="s" href={`/heads/${head.headId}`} />}
            deed={
              may.release ? (
                <Link href={`/heads/${head.headId}`}>
                  Release<span className="visually-hidden"> {head.tag}</span>
                </Link>
              ) : (
                <JobLink number={job.number} />
              )
            }
          >
            Finished, waiting for release since <When at={head.since} zone={timeZone} locale={locale} style="day" />{' '}
            <span className="soft">{job.customer}</span>
          </Line>
        )),
    ),
  }
}

function ready({ ready: jobs, timeZone, locale }: CounterView, may: May): Kind {
  return {
    rest: { href: '/counter?show=ready', label: 'ready' },
    lines: jobs.map((job) => (
      <Line
        key={`ready ${job.jobId}`}
        what={<JobLink number={job.number} />}
        deed={
          may.handOver ? (
            <Link href={`/jobs/${job.number}/hand-over`}>Hand over {job.number}</Link>
          ) : (
            <JobLink number={job.number} />
          )
        }
      >
        {job.customer}: ready since{' '}
        {job.heads[0] && <When at={job.heads[0].since} zone={timeZone} locale={locale} style="day" />}{' '}
        <span className="soft">
          <Phone number={job.phone} />
        </span>
      </Line>
    )),
  }
}
