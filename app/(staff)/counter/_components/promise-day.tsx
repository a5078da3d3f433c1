import { SaidDay } from '@/app/_components/ui/said-day'
import { Sign } from '@/app/_components/ui/sign'
import { daysText, type SaidDay as Day } from '@/lib/core/shop/when-words'

type Props = {
  promised: Day | null
  /** Null: none was promised, or all of it has left. */
  daysLeft: number | null
  urgent: boolean
}

/** The promised day of a job, and whether it is today or how late it is. */
export function PromiseDay({ promised, daysLeft, urgent }: Props) {
  return (
    <span className="row">
      {urgent && <strong>Urgent</strong>}
      {promised ? <Promised promised={promised} daysLeft={daysLeft} /> : <span className="soft">no promise date</span>}
    </span>
  )
}

function Promised({ promised, daysLeft }: { promised: Day; daysLeft: number | null }) {
  if (daysLeft === null)
    return (
      <span className="soft">
        <SaidDay {...promised} />
      </span>
    )
  return (
    <span className="nowrap">
      {daysLeft < 0 && <Sign kind="caution" />} <SaidDay {...promised} />
      {daysLeft < 0 && <strong>, {daysText(-daysLeft)} late</strong>}
      {daysLeft === 0 && ', today'}
    </span>
  )
}
