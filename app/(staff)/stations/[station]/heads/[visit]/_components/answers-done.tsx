'use client'
import { useState } from 'react'
import type { ToCorrect } from '@/app/_components/readings/correct-form'
import { Button } from '@/app/_components/ui/button'
import { Dialog } from '@/app/_components/ui/dialog'
import { NotFetched, useLazyModule } from '@/app/_components/ui/use-lazy-module'
import type { StepField, StepScreen } from '@/lib/use-cases/stations/see-step'
import { useOutbox } from '../../../../_app/here'
import { withKeptOfHead } from '../../../../_app/kept-of-head'
import { useDeeds, type DeedValue } from '../../../../_app/use-deeds'
import styles from './step.module.css'

const loadForm = () => import('@/app/_components/readings/correct-form')
type Form = Awaited<ReturnType<typeof loadForm>>['CorrectForm']

/** What was read at a ticked step. Whoever may corrects it here: the tick stays, and what stood there stays on record. */
export function AnswersDone({ screen: told }: { screen: StepScreen }) {
  const { unsent } = useOutbox()
  const screen = withKeptOfHead(told, unsent)
  const deeds = useDeeds()
  const [asking, setAsking] = useState<{ reading: ToCorrect; Form: Form } | null>(null)
  const { load, pending, failed } = useLazyModule(loadForm)
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
                  pending={pending}
                  onClick={() => {
                    setSaid('')
                    load(({ CorrectForm: Form }) => setAsking({ reading, Form }))
                  }}
                >
                  Correct{length > 1 && ` ${reading.standing}`}
                </Button>
              ))}
            </span>
          </li>
        ))}
      </ul>
      {failed && <NotFetched />}
      <p role="status">{said}</p>
      <Dialog open={asking !== null} onClose={close} title="Correct a reading">
        {asking && (
          <asking.Form<DeedValue>
            visitId={screen.visitId}
            reading={asking.reading}
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
