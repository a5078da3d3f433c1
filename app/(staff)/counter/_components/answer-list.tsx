import Link from 'next/link'
import { Tag } from '@/app/_components/tag/tag'
import { EmptyState } from '@/app/_components/ui/empty-state'
import { Phone } from '@/app/_components/ui/phone'
import type { CounterView } from '@/lib/use-cases/counter/see-counter'
import { FindingList, HowFar } from '../findings/_components/finding-list'
import styles from './counter.module.css'

type Props = { findings: CounterView['answers']; view: CounterView; mayAsk: boolean }

/** Findings that wait for a customer's yes or no, with the number to call. */
export function AnswerList({ findings, view, mayAsk }: Props) {
  return (
    <section className="part" aria-label="Findings waiting for an answer">
      <h2>Findings waiting for an answer {findings.length > 0 && <span className="soft">{findings.length}</span>}</h2>
      {findings.length === 0 ? (
        <EmptyState title="No customer has to be asked">
          <p>
            What a machinist finds beyond the order stands here with the phone number, until the customer says yes or
            no.
          </p>
        </EmptyState>
      ) : (
        <ul className="plain-list">
          {findings.map((finding) => (
            <li key={finding.id} className={styles.job}>
              <div className="row">
                <Tag number={finding.tag} size="s" href={`/heads/${finding.headId}`} />
                {mayAsk ? (
                  <Link href={`/counter/findings/${finding.id}`} className={styles.jobLink}>
                    {finding.what}
                  </Link>
                ) : (
                  <strong>{finding.what}</strong>
                )}
              </div>
              <div className="row spread">
                <span>
                  {finding.customer}, job <Link href={`/jobs/${finding.jobNumber}`}>{finding.jobNumber}</Link>
                </span>
                <Phone number={finding.phone} />
              </div>
              <p className="soft">
                <HowFar finding={finding} timeZone={view.timeZone} locale={view.locale} />
              </p>
            </li>
          ))}
        </ul>
      )}
      {view.answeredByLink.length > 0 && (
        <>
          <h3>Answered on their links</h3>
          <FindingList
            tags
            findings={view.answeredByLink}
            timeZone={view.timeZone}
            locale={view.locale}
            mayAsk={mayAsk}
          />
        </>
      )}
    </section>
  )
}
