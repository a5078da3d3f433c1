'use client'
import { useRouter } from 'next/navigation'
import { ActionForm } from '@/app/_components/form/action-form'
import { useActionForm } from '@/app/_components/form/use-action-form'
import { CheckList } from '@/app/_components/ui/check-list'
import { applyRulesSchema } from '@/lib/schemas/rules'
import type { HeadBehind } from '@/lib/use-cases/rules/see-rules-preview'
import { applyRulesAction } from '../actions'

/** Which heads follow the newest rules from now on, each with what that changes. */
export function ApplyForm({ version, heads }: { version: number; heads: readonly HeadBehind[] }) {
  const router = useRouter()
  const form = useActionForm(applyRulesSchema, applyRulesAction, {
    defaultValues: { version, visitIds: [] },
    onDone: () => router.push('/back-room/steps'),
  })
  return (
    <ActionForm form={form} submitLabel="Let these heads follow">
      <CheckList
        label="Which heads are to follow"
        options={heads.map(({ visitId, tag, jobNumber, changes }) => ({
          value: visitId,
          label: `${tag}, job ${jobNumber}`,
          hint: changes.length === 0 ? 'Its steps stay as they are.' : `${changes.join('. ')}.`,
        }))}
        {...form.text('visitIds')}
      />
    </ActionForm>
  )
}
