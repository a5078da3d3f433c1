import { FindingList } from '@/app/(staff)/counter/findings/_components/finding-list'
import type { JobView } from '@/lib/use-cases/jobs/see-job'

/** What was found on the job's heads beyond the order, and what the customer said. */
export function FindingsPart({ job }: { job: JobView }) {
  if (job.findings.length === 0) return null
  return (
    <section className="part" aria-label="Findings">
      <h2>Findings</h2>
      <FindingList tags findings={job.findings} timeZone={job.timeZone} locale={job.locale} mayAsk={job.may.ask} />
    </section>
  )
}
