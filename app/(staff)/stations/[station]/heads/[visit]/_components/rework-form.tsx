'use client'
import { payerOptions } from '@/app/(staff)/away/_components/payer'
import { rejectOutsideAction } from '@/app/(staff)/away/actions'
import { ActionForm } from '@/app/_components/form/action-form'
import { useActionForm } from '@/app/_components/form/use-action-form'
import { Select } from '@/app/_components/ui/select'
import { TextInput } from '@/app/_components/ui/text-input'
import { rejectOutsideSchema } from '@/lib/schemas/outside'

type ReworkProps = { visitId: string; orderId: string; words: string; onDone: () => void }

/** Rejects what a vendor sent back, with what is wrong filled in. */
export function ReworkForm({ visitId, orderId, words, onDone }: ReworkProps) {
  const form = useActionForm(rejectOutsideSchema, rejectOutsideAction, {
    defaultValues: { orderId, visitId, why: words.slice(0, 300) },
    onDone,
  })
  return (
    <ActionForm form={form} submitLabel="Reject">
      <p>All work of this order is then needed again. Send the head out again or do the work here.</p>
      <TextInput label="What is wrong" required {...form.text('why')} />
      <Select
        label="Cost of rework paid by"
        required
        empty="Choose who pays"
        options={payerOptions}
        {...form.text('redoCost')}
      />
    </ActionForm>
  )
}
