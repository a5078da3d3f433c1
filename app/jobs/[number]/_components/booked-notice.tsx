import { ButtonLink } from '@/app/_components/ui/button-link'
import { Notice } from '@/app/_components/ui/notice'
import type { JobView } from '@/lib/use-cases/jobs/see-job'
import { paper } from './papers'

/** Right after booking: print at once, while the customer stands there. */
export function BookedNotice({ job }: { job: JobView }) {
  return (
    <Notice title={`Job ${job.number} is booked`}>
      <p>Wire the tags to the heads: {job.heads.map((head) => head.tag).join(', ')}.</p>
      <div className="row">
        <ButtonLink href={paper('job-sheet', job.number)} prefetch={false} target="_blank" variant="main">
          Print the job sheet
        </ButtonLink>
        <ButtonLink href={paper('tag-labels', job.number)} prefetch={false} target="_blank">
          Print tag labels
        </ButtonLink>
      </div>
    </Notice>
  )
}
