'use client'
import { ActionForm } from '@/app/_components/form/action-form'
import { useActionForm } from '@/app/_components/form/use-action-form'
import { restoreRulesSchema } from '@/lib/schemas/rules'
import { restoreRulesAction } from '../actions'
import { ChangeShown, shownLabel } from './change-shown'
import { Reason } from './step-fields'

/** Makes the tables of steps what they were under an earlier version. */
export function RestoreForm({ version, to }: { version: number; to: number }) {
  const form = useActionForm(restoreRulesSchema, restoreRulesAction, {
    defaultValues: { version, to, reason: '', seen: '' },
  })
  return (
    <ActionForm form={form} submitLabel={shownLabel(form.value, 'Make the steps so again')}>
      <Reason text={form.text} />
      <ChangeShown form={form} />
    </ActionForm>
  )
}
