import { Notice } from '@/app/_components/ui/notice'
import { PaperLink } from '@/app/_components/papers/paper-link'
import { isTag } from '@/lib/core/shop/tag-number'
import type { JobView } from '@/lib/use-cases/jobs/see-job'
import { moneyPaperHref, paper } from './papers'

/** Right after booking: print at once, while the customer stands there. */
export function BookedNotice({ job, notPlanned }: { job: JobView; notPlanned: boolean }) {
  const tagged = job.heads.map((head) => head.tag).filter(isTag)
  return (
    <Notice title={`Job ${job.number} is booked`}>
      {tagged.length > 0 && <p>Wire the tags to the heads: {tagged.join(', ')}.</p>}
      {tagged.length < job.heads.length && <p>What we buy gets its tag when it arrives: order it below.</p>}
      {notPlanned && (
        <p>The cut chosen at the bench is not planned: this job’s figures do not give it. Make the cut plan below.</p>
      )}
      <div className="row">
        <PaperLink href={paper('job-sheet', job.number)} pages={job.heads.length} variant="main">
          Print the job sheet
        </PaperLink>
        {tagged.length > 0 && (
          <PaperLink href={paper('tag-labels', job.number)} pages={tagged.length}>
            Print tag labels
          </PaperLink>
        )}
        {job.account && (
          <PaperLink href={paper('claim-ticket', job.number)} pages={1}>
            Print the claim ticket
          </PaperLink>
        )}
        {job.account?.payments.map(
          ({ id, receipt }) =>
            receipt && (
              <PaperLink key={id} href={moneyPaperHref(receipt.id)} pages={1}>
                {`Print receipt ${receipt.number}`}
              </PaperLink>
            ),
        )}
      </div>
    </Notice>
  )
}
