import { Link } from '@/app/_components/ui/link'
import { DefinitionList, type Definition } from '@/app/_components/ui/definition-list'
import { Notice } from '@/app/_components/ui/notice'
import { When } from '@/app/_components/ui/when'
import type { JobView } from '@/lib/use-cases/jobs/see-job'
import { ChangeJob, JobDeeds } from './openers'
import { JobTitle } from './job-title'
import styles from './job.module.css'

/** Who it is for, by when, and what was agreed for the whole job. */
export function JobHeader({ job }: { job: JobView }) {
  return (
    <>
      <JobTitle job={job} />
      {job.note !== '' && <p className={styles.note}>{job.note}</p>}
      <From from={job.from} />
      <Agreed job={job} />
      {job.cancelled && (
        <Notice title="Cancelled" live={false}>
          <p>
            {job.cancelled.reason}, <When at={job.cancelled.at} zone={job.timeZone} locale={job.locale} style="date" />
          </p>
        </Notice>
      )}
      {job.may.change && (
        <div className="row">
          <ChangeJob job={job} />
          <JobDeeds job={job} />
        </div>
      )}
    </>
  )
}

/** The answer of the cut bench that it was booked from. */
function From({ from: { estimate, benchQuery } }: Pick<JobView, 'from'>) {
  if (estimate) {
    return (
      <p>
        Booked from <Link href={`/cut-bench/kept/${estimate.id}`}>estimate {estimate.number}</Link>
      </p>
    )
  }
  if (benchQuery === '') return null
  return (
    <p>
      Booked from <Link href={`/cut-bench?${benchQuery}`}>the cut bench</Link>
    </p>
  )
}

function Agreed({ job }: { job: JobView }) {
  const { flatOnly, minCc, maxCut } = job.classLimits
  const agreed: (Definition | false)[] = [
    flatOnly && { label: 'Class', value: 'flat cuts only' },
    minCc !== '' && { label: 'Smallest chamber', value: minCc },
    maxCut !== '' && { label: 'Deepest cut', value: maxCut },
    job.finishAsked !== '' && { label: 'Deck finish asked', value: job.finishAsked },
    job.partsPlace !== '' && { label: 'Parts location', value: job.partsPlace },
  ]
  const items = agreed.filter((item) => item !== false)
  return items.length === 0 ? null : <DefinitionList close items={items} />
}
