import { Link } from '@/app/_components/ui/link'
import { ActionButton } from '@/app/(staff)/back-room/_components/action-button'
import { FindingList } from '@/app/(staff)/counter/findings/_components/finding-list'
import { When } from '@/app/_components/ui/when'
import type { CustomerView } from '@/lib/use-cases/customers/see-customer'
import { undoMergeAction } from '../actions'

type Props = { customer: CustomerView }

/** What was found beyond the orders, and what the customer said to it. */
export function FoundOnHeads({ customer: { findings, timeZone, locale, may } }: Props) {
  if (findings.length === 0) return null
  return (
    <section aria-label="Findings">
      <h2>Findings</h2>
      <FindingList tags findings={findings} timeZone={timeZone} locale={locale} mayAsk={may.ask} />
    </section>
  )
}

/** Calls and messages of all these jobs, the newest first. */
export function Said({ customer: { said, timeZone, locale } }: Props) {
  return (
    <section aria-label="Calls and messages">
      <h2>Calls and messages</h2>
      {said.length === 0 ? (
        <p className="soft">Nothing was said or written yet.</p>
      ) : (
        <ul className="plain-list">
          {said.map(({ id, at, by, jobNumber, text }) => (
            <li key={id}>
              <p className="soft">
                <When at={at} zone={timeZone} locale={locale} />, {by}, job{' '}
                <Link href={`/jobs/${jobNumber}`}>{jobNumber}</Link>
              </p>
              <p>{text}</p>
            </li>
          ))}
        </ul>
      )}
    </section>
  )
}

/** Records that turned out to be this customer. */
export function Merges({ customer: { merges, may, timeZone, locale } }: Props) {
  if (merges.length === 0) return null
  return (
    <section aria-label="Merged records">
      <h2>Merged records</h2>
      <ul className="plain-list">
        {merges.map(({ id, name, phone, at, by, reason }) => (
          <li key={id} className="row spread">
            <div>
              <p>{[name, phone].filter(Boolean).join(', ')}</p>
              <p className="soft">
                <When at={at} zone={timeZone} locale={locale} style="date" />, {by}: {reason}
              </p>
            </div>
            {may.unmerge && (
              <ActionButton action={undoMergeAction} input={{ mergeId: id }}>
                Undo
              </ActionButton>
            )}
          </li>
        ))}
      </ul>
    </section>
  )
}
