'use client'
import { ActionForm } from '@/app/_components/form/action-form'
import { useActionForm } from '@/app/_components/form/use-action-form'
import { TextInput } from '@/app/_components/ui/text-input'
import { acceptPlanSchema } from '@/lib/schemas/plan'
import { acceptPlanAction } from './actions'

/** The customer said yes to this version; a newer version will need a new yes. */
export function AcceptForm({ planId, number }: { planId: string; number: number }) {
  const form = useActionForm(acceptPlanSchema, acceptPlanAction, {
    defaultValues: { planId, by: '', how: '' },
  })
  return (
    <details>
      <summary>The customer accepts version {number}</summary>
      <ActionForm form={form} submitLabel="Note the yes">
        <div className="columns">
          <TextInput label="Who said yes" required {...form.text('by')} />
          <TextInput label="How" hint="At the counter, by telephone, by mail." required {...form.text('how')} />
        </div>
      </ActionForm>
    </details>
  )
}
