import Link from 'next/link'
import { Tag } from '@/app/_components/tag/tag'
import { Day } from '@/app/_components/ui/day'
import type { Station } from '@/lib/core/route/step-ids'
import type { QueueLine } from '@/lib/use-cases/stations/see-queue'
import { stepHref } from '../../step-href'
import styles from './queue-list.module.css'
import { reasonText, waitText } from '@/lib/words/route'

type Props = { title: string; station: Station; lines: readonly QueueLine[]; none: string; locale: string }

export function QueueList({ title, station, lines, none, locale }: Props) {
  return (
    <section aria-label={title} className="stack">
      <h2>{title}</h2>
      {lines.length === 0 ? (
        <p className="soft">{none}</p>
      ) : (
        <ul className={styles.list}>
          {lines.map((line) => (
            <li key={`${line.visitId}${line.step.stepId}${line.step.occurrence}${line.step.orderId ?? ''}`}>
              <Link href={stepHref(station, line.visitId, line.step)} className={styles.line}>
                <Tag number={line.tag} />
                <span className={styles.what}>
                  <strong>{line.step.label}</strong>
                  <span className="soft">{note(line)}</span>
                  {line.out.length > 0 && <span className={styles.out}>Out of tolerance: {line.out.join('; ')}</span>}
                  {line.mateHeld !== '' && <span>its mate {line.mateHeld} is held</span>}
                </span>
                <span className={styles.promise}>
                  {line.urgent && <strong>urgent </strong>}
                  {line.promiseOn && (
                    <>
                      by <Day on={line.promiseOn} locale={locale} />
                    </>
                  )}
                </span>
              </Link>
            </li>
          ))}
        </ul>
      )}
    </section>
  )
}

/** The one thing worth knowing before opening it. */
function note(line: QueueLine): string {
  const { step } = line
  if (step.reason !== null) return reasonText(step.reason)
  if (line.whereabouts === 'held') return 'held'
  if (line.whereabouts === 'away') return 'away at a vendor'
  if (line.whereabouts === 'waiting for parts') return 'waiting for parts'
  if (step.waitsFor.length > 0) return `after ${step.waitsFor.slice(0, 2).map(waitText).join(', ')}`
  return line.casting
}
