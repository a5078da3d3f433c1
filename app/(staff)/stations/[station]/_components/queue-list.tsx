import { Tag } from '@/app/_components/tag/tag'
import { SaidDay } from '@/app/_components/ui/said-day'
import type { HeadMark } from '@/lib/core/route/head-marks'
import type { Station } from '@/lib/core/route/step-ids'
import type { QueueLine } from '@/lib/use-cases/stations/see-queue'
import { markText } from '@/lib/words/head-marks'
import { StationLink } from '../../_app/station-link'
import { stepHref } from '../../step-href'
import styles from './queue-list.module.css'

type Props = {
  title: string
  station: Station
  lines: readonly QueueLine[]
  /** Said where there is no line; left out: then the whole part is. */
  none?: string
  /** Folded under its title and how many they are. */
  folded?: boolean
}

export function QueueList({ title, station, lines, none, folded = false }: Props) {
  if (lines.length === 0) return none === undefined ? null : <p className="soft">{none}</p>
  const list = (
    <ul className={styles.list} aria-label={title}>
      {lines.map((line) => (
        <li key={`${line.visitId}${line.step.stepId}${line.step.occurrence}${line.step.orderId ?? ''}`}>
          <Line line={line} station={station} />
        </li>
      ))}
    </ul>
  )
  if (folded) {
    return (
      <details className={styles.folded}>
        <summary>
          {title}: {lines.length}
        </summary>
        {list}
      </details>
    )
  }
  return (
    <section aria-label={title} className="stack">
      <h2>
        {title}: {lines.length}
      </h2>
      {list}
    </section>
  )
}

function Line({ line, station }: { line: QueueLine; station: Station }) {
  const told = line.marks.filter(({ code }) => code !== 'urgent')
  return (
    <StationLink href={stepHref(station, line.visitId, line.step)} className={styles.line}>
      <Tag number={line.tag} />
      <span className={styles.what}>
        <strong>{line.step.label}</strong>
        <span className="soft">{line.note}</span>
        {told.map((mark) => {
          const words = markText(mark)
          return (
            <span key={words} className={isGrave(mark) ? styles.grave : styles.odd}>
              {words}
            </span>
          )
        })}
      </span>
      <span className={styles.where}>
        {told.length < line.marks.length && <strong>urgent</strong>}
        {line.promised && (
          <strong>
            by <SaidDay {...line.promised} />
          </strong>
        )}
        {line.place !== '' && <span>{line.place}</span>}
      </span>
    </StationLink>
  )
}

/** What the stop colour is for: nobody goes on with it unread. */
const isGrave = ({ code }: HeadMark): boolean => code === 'held' || code === 'out'
