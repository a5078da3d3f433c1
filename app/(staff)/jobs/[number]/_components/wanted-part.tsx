import { WantedShown } from '@/app/_components/wanted/wanted-shown'
import type { JobView } from '@/lib/use-cases/jobs/see-job'
import { ChangeWanted } from './openers'

/** What the benches work to on this job; heads that depart from it stand by themselves. */
export function WantedPart({ job }: { job: JobView }) {
  const { lists } = job.wanted
  return (
    <section className="part" aria-label="Wanted figures">
      <h2>Wanted figures</h2>
      {lists.map(({ tags, lines, faults }) => (
        <div key={tags.join()} className="stack">
          <details open={faults.length > 0}>
            <summary>
              {lists.length > 1 && `${tags.join(', ')}: `}
              {lines.length === 1 ? '1 figure' : `${lines.length} figures`}
            </summary>
            <WantedShown close lines={lines} faults={faults} />
          </details>
        </div>
      ))}
      {job.may.change && (
        <ChangeWanted jobId={job.id} jobNumber={job.number} version={job.version} wanted={job.wanted} />
      )}
    </section>
  )
}
