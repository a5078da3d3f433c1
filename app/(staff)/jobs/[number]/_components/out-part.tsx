import { ButtonLink } from '@/app/_components/ui/button-link'
import type { JobView } from '@/lib/use-cases/jobs/see-job'

/** The ways out of the shop: the customer's private link and the hand over, each a page of its own. */
export function OutPart({ job }: { job: JobView }) {
  if (!job.may.link && !job.may.handOver) return null
  return (
    <section className="part" aria-label="Customer link and hand over">
      <h2>Customer link and hand over</h2>
      <div className="row">
        {job.may.link && <ButtonLink href={`/jobs/${job.number}/link`}>Customer link</ButtonLink>}
        {job.may.handOver && <ButtonLink href={`/jobs/${job.number}/hand-over`}>Hand over</ButtonLink>}
      </div>
    </section>
  )
}
