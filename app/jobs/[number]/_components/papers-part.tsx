import { ButtonLink } from '@/app/_components/ui/button-link'
import { isTag } from '@/lib/core/shop/tag-number'
import type { JobView } from '@/lib/use-cases/jobs/see-job'
import { paper } from './papers'

export function PapersPart({ job }: { job: JobView }) {
  return (
    <section className="part" aria-label="Papers">
      <h2>Papers</h2>
      <div className="row">
        <ButtonLink href={paper('job-sheet', job.number)} prefetch={false} target="_blank">
          Job sheet
        </ButtonLink>
        {job.heads.some((head) => isTag(head.tag)) && (
          <ButtonLink href={paper('tag-labels', job.number)} prefetch={false} target="_blank">
            Tag labels
          </ButtonLink>
        )}
      </div>
    </section>
  )
}
