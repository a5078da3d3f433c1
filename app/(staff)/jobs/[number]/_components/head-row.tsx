import { Link } from '@/app/_components/ui/link'
import { MatesHeld } from '@/app/_components/head/mates-held'
import { HeadScale } from '@/app/_components/scale/head-scale'
import { Tag } from '@/app/_components/tag/tag'
import { progress } from '@/lib/core/route/progress'
import type { JobView } from '@/lib/use-cases/jobs/see-job'
import { TakeOff, UndoHandOver } from './openers'
import styles from './job.module.css'

const sources = { customer: '', bought: 'bought by us', 'bought-cut': 'bought already cut' }

type Props = { job: JobView; head: JobView['heads'][number] }

/** One head of the job: its tag, where it is, its scale, what was ordered. */
export function HeadRow({ job, head }: Props) {
  const who = [head.side, head.stamp && `stamp ${head.stamp}`, head.marks, head.material, sources[head.source]]
  return (
    <div className={styles.head}>
      <div className="row spread">
        <div className="row">
          <Tag number={head.tag} href={`/heads/${head.headId}`} />
          <span>{who.filter(Boolean).join(', ')}</span>
        </div>
        <span>
          <strong>{head.whereabouts}</strong>
          {head.more}
        </span>
      </div>
      <div className={styles.scale}>
        <HeadScale graduations={progress(head.route, head.held)} size="row" />
      </div>
      <MatesHeld mates={head.matesHeld} />
      <p>
        Ordered:{' '}
        {head.ordered.length === 0
          ? 'nothing yet'
          : head.ordered.map(({ label, note }) => (note === '' ? label : `${label} (${note})`)).join(', ')}
      </p>
      <p className="soft">{figuresOf(head)}</p>
      {head.comeback && (
        <p>
          Comeback{head.comeback.cause !== '' && `: ${head.comeback.cause}`}
          {head.comeback.pays !== '' && `; pays: ${head.comeback.pays}`}
        </p>
      )}
      <div className="row">
        <Link href={`/heads/${head.headId}`}>Record of {head.tag}</Link>
        {job.may.change && head.mayTakeOff && <TakeOff jobId={job.id} visitId={head.visitId} tag={head.tag} />}
        {job.may.undoHandOver && head.gone && <UndoHandOver visitId={head.visitId} tag={head.tag} />}
      </div>
    </div>
  )
}

function figuresOf(head: JobView['heads'][number]): string {
  const came =
    head.cameWith === '' ? '' : `came with ${head.cameWith}${head.ownedBy === '' ? '' : ` (${head.ownedBy})`}`
  const parts = [
    head.cutTo === '' ? 'no target' : head.hasChambers ? `target ${head.cutTo}` : `cut: ${head.cutTo}`,
    head.present !== '' && `asked as ${head.present}, not measured`,
    head.used ? 'used' : 'new',
    came,
    head.rackPlace !== '' && `rack ${head.rackPlace}`,
  ]
  return parts.filter(Boolean).join('; ')
}
