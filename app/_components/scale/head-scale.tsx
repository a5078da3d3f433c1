import type { Graduation } from '@/lib/drawing/graduations'
import { headScale } from '@/lib/drawing/head-scale'
import { Marks } from '../charts/marks-svg'
import styles from './head-scale.module.css'

type Props = {
  graduations: readonly Graduation[]
  /** `row`: one of many in a list, told in one sentence. `page`: the head's own, told step by step. */
  size?: 'row' | 'page'
}

const pitchMm = { row: 3, page: 4 }

/** The head's route as the edge of a steel scale: one graduation a step, long where a reading is owed. */
export function HeadScale({ graduations, size = 'page' }: Props) {
  // A short route keeps its graduations slim; a long one gets the room it needs.
  const widthMm = Math.max(12, graduations.length) * pitchMm[size]
  const drawing = headScale(graduations, { widthMm, forHand: false })
  if (size === 'row') return <Marks drawing={drawing} className={styles.row} />
  return (
    <div className={styles.page}>
      <Marks drawing={drawing} decorative />
      <ol aria-label={drawing.title} className="visually-hidden">
        {graduations.map((graduation, at) => (
          <li key={at}>{inWords(graduation)}</li>
        ))}
      </ol>
    </div>
  )
}

function inWords({ label, state, owesReading, outside, held }: Graduation): string {
  const notes = [
    outside && 'outside',
    owesReading && state !== 'done' && state !== 'not needed' && 'a reading is owed',
    held && 'held here',
  ].filter(Boolean)
  return [`${label}: ${state}`, ...notes].join(', ')
}
