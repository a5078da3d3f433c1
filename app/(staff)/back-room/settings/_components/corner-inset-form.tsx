'use client'
import { ActionForm } from '@/app/_components/form/action-form'
import { FormFigure } from '@/app/_components/form/form-figure'
import { useActionForm } from '@/app/_components/form/use-action-form'
import type { CornerInset } from '@/lib/core/straightness/corner-inset'
import { cornerInsetSchema } from '@/lib/schemas/corner-inset'
import fields from '../../_components/fields.module.css'
import { changeCornerInsetAction } from '../actions'

/** How far inside the edges of the deck this shop touches the corners. */
export function CornerInsetForm({ inset }: { inset: CornerInset | null }) {
  const form = useActionForm(cornerInsetSchema, changeCornerInsetAction, {
    defaultValues: { edge: inset ? String(inset.edgeIn) : '', end: inset ? String(inset.endIn) : '' },
  })
  return (
    <ActionForm form={form} submitLabel="Save">
      <div className={fields.grid}>
        <FormFigure form={form} name="edge" label="Inside the long edges" quantity="cornerInset" />
        <FormFigure form={form} name="end" label="Inside the ends" quantity="cornerInset" />
      </div>
    </ActionForm>
  )
}
