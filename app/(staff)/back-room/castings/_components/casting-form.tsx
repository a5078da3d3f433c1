'use client'
import { ActionForm } from '@/app/_components/form/action-form'
import { DraftNotice } from '@/app/_components/form/draft-notice'
import { useActionForm } from '@/app/_components/form/use-action-form'
import { useDraft } from '@/app/_components/form/use-draft'
import { changeCastingSchema } from '@/lib/schemas/casting'
import { EntryForm } from '../../_components/entry-form'
import { addCastingAction, changeCastingAction } from '../actions'
import { BoltFields } from './bolt-fields'
import { ChamberFields } from './chamber-fields'
import { FactFields } from './fact-fields'
import { FigureGroups } from './figure-groups'
import { blank, type CastingForm, type CastingValues } from './form-values'
import { labelOf } from './label-of'
import { VariantFields } from './variant-fields'

export function AddCastingForm() {
  const form = useActionForm(changeCastingSchema, addCastingAction, {
    defaultValues: blank,
  })
  const draft = useDraft('add a casting', form)
  return (
    <div className="stack">
      <DraftNotice draft={draft} />
      <ActionForm form={form} submitLabel="Add this casting" className="stack-large">
        <CastingFields form={form} />
      </ActionForm>
    </div>
  )
}

export const ChangeCastingForm = ({ fresh, by }: { fresh: CastingValues; by: string }) => (
  <EntryForm
    schema={changeCastingSchema}
    action={changeCastingAction}
    values={fresh}
    submitLabel="Save"
    className="stack-large"
    fields={(form) => <CastingFields form={form} />}
    kept={{ what: fresh.name, labelOf, by }}
  />
)

function CastingFields({ form }: { form: CastingForm }) {
  return (
    <>
      <FactFields form={form} />
      <ChamberFields form={form} />
      <FigureGroups form={form} />
      <BoltFields form={form} />
      <VariantFields form={form} />
    </>
  )
}
