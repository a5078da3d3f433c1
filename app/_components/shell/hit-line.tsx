import type { Hit } from '@/lib/use-cases/find/hits'
import { Tag } from '../tag/tag'
import styles from './find-box.module.css'

/** One thing found, in one line: to stand inside a link. */
export function HitLine({ hit }: { hit: Hit }) {
  if (hit.kind === 'job') {
    return (
      <span className={styles.line}>
        <span className={styles.number}>
          <span className="visually-hidden">job </span>
          {hit.number}
        </span>
        <span>{hit.customer}</span>
        <span className="soft">{[hit.tags.join(', '), hit.whereabouts.join(', ')].filter(Boolean).join(' · ')}</span>
      </span>
    )
  }
  const marks = [hit.stamp, hit.marks, hit.casting].filter(Boolean).join(', ')
  const last = [hit.jobNumber && `job ${hit.jobNumber}`, hit.customer, hit.whereabouts].filter(Boolean).join(', ')
  return (
    <span className={styles.line}>
      {hit.tag !== '' && <Tag number={hit.tag} size="s" />}
      {!hit.worn && <span className="soft">tag taken off</span>}
      <span>{marks}</span>
      <span className="soft">{last}</span>
    </span>
  )
}
