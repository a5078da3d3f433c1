'use client'
import type { ReactNode } from 'react'
import { useController } from 'react-hook-form'
import { Check } from '@/app/_components/ui/check'
import { Choice } from '@/app/_components/ui/choice'
import { TextInput } from '@/app/_components/ui/text-input'
import { FieldGroup } from '@/app/_components/ui/field'
import { presetLabels, workLabel } from '@/lib/core/route/presets'
import type { RouteRules } from '@/lib/core/route/rules'
import { presets, type Preset, type WorkId } from '@/lib/core/route/step-ids'
import { orderableWork } from '@/lib/core/shop/orderable-work'
import { orderOf, type BookJobForm } from '@/lib/schemas/job'
import type { BookingActionForm } from './booking-action-form'
import styles from './booking.module.css'
import { Fold } from './fold'

/** A preset fills the lines; then line by line. */
export function WorkPart({ form, rules }: { form: BookingActionForm; rules: RouteRules }) {
  const preset = useController({ control: form.form.control, name: 'preset' }).field
  const { field } = useController({ control: form.form.control, name: 'ordered' })
  const lines = field.value
  const start = (chosen: Preset) => {
    preset.onChange(chosen)
    field.onChange(orderOf(chosen))
  }
  const set = (work: WorkId, on: boolean) => {
    const rest = lines.filter((line) => line.work !== work)
    field.onChange(on ? [...rest, { work, note: '' }] : rest)
  }
  const note = (work: WorkId, text: string) =>
    field.onChange(lines.map((line) => (line.work === work ? { ...line, note: text } : line)))
  const [cuts, ...others] = orderableWork(rules)
  return (
    <>
      <Choice
        label="Kind of job"
        name="preset"
        options={presets.map((value) => ({ value, label: presetLabels[value] }))}
        value={preset.value}
        onChange={(event) => start(event.target.value as Preset)}
      />
      {cuts && (
        <FieldGroup id="work-cuts" label="Cuts">
          <div className="row">
            {cuts.work.map((work) => (
              <Check
                key={work}
                label={workLabel(work, rules)}
                name={`work-${work}`}
                checked={lines.some((line) => line.work === work)}
                onChange={(event) => set(work, event.target.checked)}
              />
            ))}
          </div>
        </FieldGroup>
      )}
      <p>
        <strong>Ordered:</strong>{' '}
        {lines.length === 0 ? 'nothing yet' : lines.map((line) => workLabel(line.work, rules)).join(', ')}
      </p>
      <Fold form={form} title="Change the work line by line" within={['ordered']} inner>
        <div className={styles.work}>
          {others.map((group) => (
            <WorkGroup key={group.label} label={group.label}>
              {group.work.map((work) => (
                <WorkLine
                  key={work}
                  label={workLabel(work, rules)}
                  name={`work-${work}`}
                  line={lines.find((entry) => entry.work === work)}
                  onSet={(on) => set(work, on)}
                  onNote={(text) => note(work, text)}
                />
              ))}
            </WorkGroup>
          ))}
          {cuts && (
            <WorkGroup label="Notes to the cuts">
              {lines.map(
                ({ work, note: text }) =>
                  cuts.work.includes(work) && (
                    <NoteToWork
                      key={work}
                      label={workLabel(work, rules)}
                      text={text}
                      onNote={(typed) => note(work, typed)}
                    />
                  ),
              )}
            </WorkGroup>
          )}
        </div>
      </Fold>
    </>
  )
}

const WorkGroup = ({ label, children }: { label: string; children: ReactNode }) => (
  <FieldGroup id={`work-${label.replaceAll(' ', '-')}`} label={label}>
    {children}
  </FieldGroup>
)

type LineProps = {
  label: string
  name: string
  line: BookJobForm['ordered'][number] | undefined
  onSet: (on: boolean) => void
  onNote: (text: string) => void
}

const WorkLine = ({ label, name, line, onSet, onNote }: LineProps) => (
  <div>
    <Check label={label} name={name} checked={line !== undefined} onChange={(event) => onSet(event.target.checked)} />
    {line && <NoteToWork label={label} text={line.note} onNote={onNote} />}
  </div>
)

type NoteProps = { label: string; text: string; onNote: (text: string) => void }

const NoteToWork = ({ label, text, onNote }: NoteProps) => (
  <TextInput
    label={`Note to ${label.toLowerCase()}`}
    value={text}
    maxLength={200}
    onChange={(event) => onNote(event.target.value)}
  />
)
