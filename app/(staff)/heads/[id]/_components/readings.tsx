'use client'
import { useState } from 'react'
import { CorrectForm, type ToCorrect } from '@/app/_components/readings/correct-form'
import { Button } from '@/app/_components/ui/button'
import { Dialog } from '@/app/_components/ui/dialog'
import { Table } from '@/app/_components/ui/table'
import { When } from '@/app/_components/ui/when'
import type { ReadingLine } from '@/lib/use-cases/heads/reading-lines'
import type { VisitView } from '@/lib/use-cases/heads/see-head'
import type { ShopLocale } from '@/lib/use-cases/shop/shop-locale'
import { correctReadingAction } from '../actions'
import styles from './route.module.css'

type Props = { visit: VisitView; mayCorrect: boolean; manner: ShopLocale }

/** Every reading ever taken, a fold a step; corrected, never changed: what stood there before stands beside it. */
export function Readings({ visit, mayCorrect, manner }: Props) {
  const [asking, setAsking] = useState<ReadingLine | null>(null)
  if (visit.readings.length === 0) return <p className="soft">No readings yet.</p>
  return (
    <section className="stack" aria-label="Readings">
      <h3>Readings</h3>
      <div>
        {byStep(visit.readings).map(([step, lines]) => (
          <details key={step}>
            <summary>
              {step} <span className={`soft ${styles.short}`}>{inShort(lines)}</span>
            </summary>
            <Table
              label={`Readings at ${step.toLowerCase()}, job ${visit.jobNumber}`}
              columns={mayCorrect ? [...columns, { id: 'correct', label: 'Correct' }] : columns}
              rows={lines.map((line) => ({
                id: line.id,
                cells: cellsOf(line, manner, () => setAsking(line)),
              }))}
            />
          </details>
        ))}
      </div>
      <Dialog open={asking !== null} onClose={() => setAsking(null)} title="Correct a reading">
        {asking && (
          <CorrectForm
            visitId={visit.visitId}
            reading={toCorrect(asking)}
            action={correctReadingAction}
            onDone={() => setAsking(null)}
          />
        )}
      </Dialog>
    </section>
  )
}

const columns = [
  { id: 'what', label: 'Reading' },
  { id: 'value', label: 'Value', figure: true },
  { id: 'before', label: 'Before' },
  { id: 'who', label: 'By' },
  { id: 'when', label: 'When' },
  { id: 'instrument', label: 'Read with' },
]

const toCorrect = ({ id, kind, label, point, step, notTaken, text }: ReadingLine): ToCorrect => ({
  ...{ id, kind, step, name: `${label} ${point}`.trimEnd() },
  standing: notTaken ?? text,
})

const valueOf = (line: ReadingLine): string => (line.withdrawn ? 'withdrawn' : line.text)

const cellsOf = (line: ReadingLine, manner: ShopLocale, correct: () => void) => ({
  what: `${line.label} ${line.point}`,
  value: (
    <>
      {valueOf(line)}
      {line.filled && <div className="soft">filled, not measured</div>}
      {line.confirmed !== '' && <div className="soft">{line.confirmed}</div>}
    </>
  ),
  before: <Earlier line={line} manner={manner} />,
  who:
    line.correction === ''
      ? line.by
      : `${line.by}, ${line.withdrawn ? 'withdrew it' : 'corrected'}: ${line.correction}`,
  when: <When at={line.at} zone={manner.timeZone} locale={manner.locale} />,
  instrument: line.instrument === '' ? '–' : line.instrument,
  correct: line.withdrawn ? (
    ''
  ) : (
    <Button variant="quiet" onClick={correct} aria-label={`Correct ${line.label} ${line.point}`}>
      Correct
    </Button>
  ),
})

/** What was read first, and every answer between it and the one that stands. */
function Earlier({ line, manner }: { line: ReadingLine; manner: ShopLocale }) {
  if (line.earlier.length === 0) return '–'
  return line.earlier.map(({ text, by, at }, place) => (
    <div key={at.toISOString() + String(place)}>
      <s>{text}</s>{' '}
      <span className="soft">
        {by}, <When at={at} zone={manner.timeZone} locale={manner.locale} />
      </span>
    </div>
  ))
}

/** The steps in the order they were first read at. */
function byStep(readings: readonly ReadingLine[]): [string, ReadingLine[]][] {
  const groups = new Map<string, ReadingLine[]>()
  for (const line of readings) groups.set(line.step, [...(groups.get(line.step) ?? []), line])
  return [...groups]
}

/** The values alone, as far as one line holds them. */
function inShort(lines: readonly ReadingLine[]): string {
  const shown = lines.slice(0, 8).map(valueOf).join(', ')
  return lines.length > 8 ? `${shown} …` : shown
}
