'use client'
import { useController } from 'react-hook-form'
import { Check } from '@/app/_components/ui/check'
import { Choice } from '@/app/_components/ui/choice'
import { TextInput } from '@/app/_components/ui/text-input'
import { FieldGroup } from '@/app/_components/ui/field'
import { presetLabels, workLabel } from '@/lib/core/route/presets'
import type { RouteRules } from '@/lib/core/route/rules'
import { presets, type Preset, type WorkId } from '@/lib/core/route/step-ids'
import { orderableWork } from '@/lib/core/shop/orderable-work'
import { orderOf } from '@/lib/schemas/job'
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
  return (
    <>
      <Choice
        label="Kind of job"
        name="preset"
        options={presets.map((value) => ({ value, label: presetLabels[value] }))}
        value={preset.value}
        onChange={(event) => start(event.target.value as Preset)}
      />
      <p>
        <strong>Ordered:</strong>{' '}
        {lines.length === 0 ? 'nothing yet' : lines.map((line) => workLabel(line.work, rules)).join(', ')}
      </p>
      <Fold form={form} title="Change the work line by line" within={['ordered']} inner>
        <div className={styles.work}>
          {orderableWork(rules).map((group) => (
            <FieldGroup key={group.label} id={`work-${group.label.replaceAll(' ', '-')}`} label={group.label}>
              {group.work.map((work) => {
                const line = lines.find((entry) => entry.work === work)
                return (
                  <div key={work}>
                    <Check
                      label={workLabel(work, rules)}
                      name={`work-${work}`}
                      checked={line !== undefined}
                      onChange={(event) => set(work, event.target.checked)}
                    />
                    {line && (
                      <TextInput
                        label={`Note to ${workLabel(work, rules).toLowerCase()}`}
                        value={line.note}
                        maxLength={200}
                        onChange={(event) => note(work, event.target.value)}
                      />
                    )}
                  </div>
                )
              })}
            </FieldGroup>
          ))}
        </div>
      </Fold>
    </>
  )
}
