'use client'
import { ActionForm } from '@/app/_components/form/action-form'
import { useActionForm } from '@/app/_components/form/use-action-form'
import { CheckList } from '@/app/_components/ui/choice'
import { applyRulesSchema } from '@/lib/schemas/rules'
import type { HeadBehind } from '@/lib/use-cases/rules/see-rules-preview'
import { applyRulesAction } from '../actions'

/** Which heads use the newest rules from now on, each with what that changes. */
export function ApplyForm({ version, heads }: { version: number; heads: readonly HeadBehind[] }) {
  const form = useActionForm(applyRulesSchema, applyRulesAction, {
    defaultValues: { version, visitIds: [] },
  })
  return (
    <ActionForm form={form} submitLabel="Apply to these heads">
      <CheckList
        label="Heads that use the newest"
        options={heads.map(({ visitId, tag, jobNumber, changes }) => ({
          value: visitId,
          label: `${tag}, job ${jobNumber}`,
          hint: changes.length === 0 ? 'Its steps do not change.' : `${changes.join('. ')}.`,
        }))}
        {...form.text('visitIds')}
      />
    </ActionForm>
  )
}
