import { When } from '@/app/_components/ui/when'
import type { JobView } from '@/lib/use-cases/jobs/see-job'
import { LogCall } from './log-call'

export function CallsPart({ job }: { job: JobView }) {
  return (
    <section className="part" aria-label="Calls">
      <h2>Calls</h2>
      {job.may.change && <LogCall jobId={job.id} />}
      {job.calls.length === 0 ? (
        <p className="soft">No calls logged yet.</p>
      ) : (
        <ul className="plain-list">
          {job.calls.map((call) => (
            <li key={call.id}>
              <p className="soft">
                <When at={call.at} zone={job.timeZone} locale={job.locale} />, {call.by}
              </p>
              <p>{call.text}</p>
            </li>
          ))}
        </ul>
      )}
    </section>
  )
}
