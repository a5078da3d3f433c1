import type { Graduation } from '@/lib/drawing/graduations'
import { headScale } from '@/lib/drawing/head-scale'
import { Marks } from '../charts/marks-svg'
import styles from './head-scale.module.css'

type Props = {
  graduations: readonly Graduation[]
  /** `row`: one of many in a list, told in one sentence. `page`: the head's own, told step by step. */
  size?: 'row' | 'page'
}

/** Short routes spread out over the same length, so that scales under one another have one height. */
const leastMm = { row: 105, page: 150 }
const pitchMm = 2.6

/** The head's route as the edge of a steel scale: one graduation a step, long where a reading is owed. */
export function HeadScale({ graduations, size = 'page' }: Props) {
  const widthMm = Math.max(leastMm[size], graduations.length * pitchMm)
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
    owesReading && state !== 'done' && state !== 'not needed' && 'reading needed',
    held && 'held here',
  ].filter(Boolean)
  return [`${label}: ${state}`, ...notes].join(', ')
}
