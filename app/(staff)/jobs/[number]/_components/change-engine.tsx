'use client'
import { ConflictResolver } from '@/app/(staff)/back-room/_components/conflict-resolver'
import { ActionForm } from '@/app/_components/form/action-form'
import { FormFigure } from '@/app/_components/form/form-figure'
import { useActionForm } from '@/app/_components/form/use-action-form'
import { Button } from '@/app/_components/ui/button'
import { EngineFields } from '@/app/(staff)/counter/book/_components/engine-fields'
import { fieldWords } from '@/app/(staff)/counter/book/_components/field-words'
import { typedFigure } from '@/lib/core/units/typed-figure'
import { changeEngineSchema, emptyEngineFigures, type ChangeEngineForm as ChangeEngineValues } from '@/lib/schemas/job'
import type { EngineView } from '@/lib/use-cases/jobs/engine-view'
import { changeEngineAction } from '../actions'

export type EngineProps = { jobId: string; jobNumber: string; version: number; engine: EngineView }

const valuesOf = ({ jobId, version, engine }: EngineProps): ChangeEngineValues => ({
  jobId,
  version,
  engine: {
    label: engine.label,
    layout: engine.layout,
    camInHead: engine.camInHead,
    figures: {
      ...emptyEngineFigures(),
      ...Object.fromEntries(engine.figures.map((figure) => [figure.key, typedFigure(figure)])),
    },
  },
})

/** What is learned of the engine after booking. */
export function ChangeEngineForm({ onClose, ...props }: EngineProps & { onClose: () => void }) {
  const form = useActionForm(changeEngineSchema, changeEngineAction, {
    defaultValues: valuesOf(props),
    onDone: onClose,
  })
  return (
    <ActionForm
      form={form}
      submitLabel="Save the engine"
      actions={
        <Button variant="quiet" onClick={onClose}>
          Leave it as it is
        </Button>
      }
    >
      <EngineFields
        text={form.text}
        figure={(key, words) => <FormFigure key={key} form={form} name={`engine.figures.${key}`} {...words} />}
      />
      <ConflictResolver
        form={form}
        fresh={valuesOf(props)}
        what={`Engine of job ${props.jobNumber}`}
        labelOf={fieldWords}
        by=""
      />
    </ActionForm>
  )
}
