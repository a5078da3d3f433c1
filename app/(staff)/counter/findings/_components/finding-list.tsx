import { Link } from '@/app/_components/ui/link'
import { Tag } from '@/app/_components/tag/tag'
import { When } from '@/app/_components/ui/when'
import type { FindingRow } from '@/lib/use-cases/findings/see-finding'

type Props = {
  findings: readonly FindingRow[]
  timeZone: string
  locale: string
  mayAsk: boolean
  /** Left out where the page is about that one head. */
  tags?: boolean
}

/** What was found beyond the order, and what the customer said to it. */
export function FindingList({ findings, timeZone, locale, mayAsk, tags = false }: Props) {
  return (
    <ul className="plain-list">
      {findings.map((finding) => (
        <li key={finding.id} className="row">
          {tags && <Tag number={finding.tag} size="s" href={`/heads/${finding.headId}`} />}
          <div>
            <p>{mayAsk ? <Link href={`/counter/findings/${finding.id}`}>{finding.what}</Link> : finding.what}</p>
            <p>
              <HowFar finding={finding} timeZone={timeZone} locale={locale} />
            </p>
          </div>
        </li>
      ))}
    </ul>
  )
}

type Far = Pick<FindingRow, 'said' | 'askedAt' | 'how' | 'reportedAt'>
type FarProps = { finding: Far; timeZone: string; locale: string }

/** "answered yes on the link by Ada Quill, Mar 3, 2:05 PM", "asked Mar 2, by phone, no answer yet". */
export function HowFar({ finding: { said, askedAt, how, reportedAt }, timeZone, locale }: FarProps) {
  const when = (at: Date) => <When at={at} zone={timeZone} locale={locale} />
  if (said) {
    return (
      <>
        <strong>answered {said.answer}</strong> {said.onLink && 'on the link '}
        {said.by !== '' && `by ${said.by}`}, {when(said.at)}
      </>
    )
  }
  if (askedAt === null) return <>found {when(reportedAt)}, not asked yet</>
  return (
    <>
      asked {when(askedAt)}
      {how !== '' && `, ${how}`}, no answer yet
    </>
  )
}
