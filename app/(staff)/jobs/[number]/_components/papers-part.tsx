import { ButtonLink } from '@/app/_components/ui/button-link'
import { PaperLink } from '@/app/_components/papers/paper-link'
import { isTag } from '@/lib/core/shop/tag-number'
import type { JobView } from '@/lib/use-cases/jobs/see-job'
import { LabelSheet } from './label-sheet'
import { paper } from './papers'

export function PapersPart({ job }: { job: JobView }) {
  const tags = job.heads.map((head) => head.tag).filter(isTag)
  const isGone = job.heads.some((head) => head.whereabouts === 'handed over')
  return (
    <section className="part" aria-label="Papers">
      <h2>Papers</h2>
      <div className="row">
        <PaperLink href={paper('job-sheet', job.number)} pages={job.heads.length}>
          Job sheet
        </PaperLink>
        {tags.length > 0 && (
          <PaperLink href={paper('tag-labels', job.number)} pages={tags.length}>
            Tag labels
          </PaperLink>
        )}
        {job.account && (
          <PaperLink href={paper('claim-ticket', job.number)} pages={1}>
            Claim ticket
          </PaperLink>
        )}
        {isGone && job.account && (
          <ButtonLink href={paper('hand-over-slip', job.number)} target="_blank">
            Hand-over slip
          </ButtonLink>
        )}
      </div>
      {tags.length > 0 && <LabelSheet number={job.number} tags={tags} />}
    </section>
  )
}
