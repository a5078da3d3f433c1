import { ButtonLink } from '@/app/_components/ui/button-link'
import { Notice } from '@/app/_components/ui/notice'
import type { JobPair } from '@/lib/use-cases/jobs/pair-view'
import type { JobView } from '@/lib/use-cases/jobs/see-job'
import { ChangeWork } from './openers'
import { HeadRow } from './head-row'

/** Heads of one casting, cut to one plan. */
export function PairPart({ job, pair }: { job: JobView; pair: JobPair }) {
  const heads = job.heads.filter((head) => head.pairId === pair.id)
  const plan = `/jobs/${job.number}/plan/${pair.id}`
  return (
    <section className="part" aria-label={`Heads, ${pair.casting}`}>
      <div className="row spread">
        <h2>{pair.casting}</h2>
        <ButtonLink href={plan}>{pair.plan ? 'Cut plan' : 'Make a cut plan'}</ButtonLink>
      </div>
      {pair.plan ? (
        <p>
          Plan {pair.plan.number}: <strong>{pair.plan.line}</strong>
          {pair.plan.acceptedBy === null ? (
            <span className="soft">, not yet accepted by the customer</span>
          ) : (
            `, accepted by ${pair.plan.acceptedBy}`
          )}
        </p>
      ) : (
        <p className="soft">No cut plan yet: it is made from the measured chambers.</p>
      )}
      {(pair.plan?.cautions ?? []).map((caution) => (
        <Notice key={caution} kind="caution" live={false}>
          <p>{caution}</p>
        </Notice>
      ))}
      <ul className="plain-list">
        {heads.map((head) => (
          <li key={head.visitId}>
            <HeadRow job={job} head={head} />
          </li>
        ))}
      </ul>
      {job.may.change && <ChangeWork jobId={job.id} heads={heads} rules={pair.rules} />}
    </section>
  )
}
