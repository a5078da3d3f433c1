'use client'
import { useState } from 'react'
import { CorrectForm, type ToCorrect } from '@/app/_components/readings/correct-form'
import { Button } from '@/app/_components/ui/button'
import { Dialog } from '@/app/_components/ui/dialog'
import type { StepField, StepScreen } from '@/lib/use-cases/stations/see-step'
import { useDeeds, type DeedValue } from '../../../../_app/use-deeds'
import styles from './step.module.css'

/** What was read at a ticked step. Whoever may corrects it here: the tick stays, and what stood there stays on record. */
export function AnswersDone({ screen }: { screen: StepScreen }) {
  const deeds = useDeeds()
  const [asking, setAsking] = useState<ToCorrect | null>(null)
  const [said, setSaid] = useState('')
  const answered = screen.fields.filter(({ answer, notTaken }) => answer !== null || notTaken !== null)
  if (answered.length === 0) return null
  const close = () => setAsking(null)
  return (
    <section aria-label="Readings" className="stack">
      <ul className={styles.answers}>
        {answered.map((field) => (
          <li key={`${field.kind} ${field.point}`}>
            <span>{nameOf(field)}</span>
            <strong>{field.repeats && field.repeats.values.length > 1 ? field.repeats.words : standing(field)}</strong>
            <span>
              {readingsOf(field, screen.step.label).map((reading, _at, { length }) => (
                <Button
                  key={reading.id}
                  variant="quiet"
                  aria-label={`Correct ${reading.name}: ${reading.standing}`}
                  onClick={() => {
                    setSaid('')
                    setAsking(reading)
                  }}
                >
                  Correct{length > 1 && ` ${reading.standing}`}
                </Button>
              ))}
            </span>
          </li>
        ))}
      </ul>
      <p role="status">{said}</p>
      <Dialog open={asking !== null} onClose={close} title="Correct a reading">
        {asking && (
          <CorrectForm<DeedValue>
            visitId={screen.visitId}
            reading={asking}
            action={deeds('correct-reading', `${screen.tag}: ${screen.step.label}, correction`)}
            onDone={(value) => {
              setSaid(value.keptAs === undefined ? 'Corrected.' : 'Kept here. It is sent when the server answers.')
              close()
            }}
          />
        )}
      </Dialog>
    </section>
  )
}

/** Those that whoever stands here may correct: of a chamber that was read more than once each by itself. */
function readingsOf(field: StepField, step: string): ToCorrect[] {
  const { kind, readingId, repeats } = field
  if (readingId === undefined) return []
  const all = repeats && repeats.values.length > 1 ? repeats.values : [{ id: readingId, text: standing(field) }]
  return all.map(({ id, text }) => ({ id, kind, name: nameOf(field), step, standing: text }))
}

const nameOf = ({ spec, pointLabel }: StepField): string => `${spec.label} ${pointLabel}`.trimEnd()

/** A choice by its words, a figure as it was typed. */
const standing = ({ spec, answer, notTaken }: StepField): string =>
  notTaken !== null
    ? `not taken: ${notTaken}`
    : (spec.choices?.find(({ value }) => value === answer)?.label ?? answer ?? '')
