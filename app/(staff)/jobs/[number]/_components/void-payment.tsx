'use client'
import { useState } from 'react'
import { ActionForm } from '@/app/_components/form/action-form'
import { useActionForm } from '@/app/_components/form/use-action-form'
import { Button } from '@/app/_components/ui/button'
import { Dialog } from '@/app/_components/ui/dialog'
import { TextInput } from '@/app/_components/ui/text-input'
import { voidPaymentSchema } from '@/lib/schemas/money-papers'
import { voidPaymentAction } from '../actions'

type Props = { paymentId: string; receipt: string }

export function VoidPayment({ paymentId, receipt }: Props) {
  const [open, setOpen] = useState(false)
  const close = () => setOpen(false)
  return (
    <>
      <Button variant="quiet" onClick={() => setOpen(true)}>
        Void<span className="visually-hidden"> payment {receipt}</span>
      </Button>
      <Dialog open={open} onClose={close} title="Void this payment" closeLabel="Cancel">
        <VoidForm paymentId={paymentId} onDone={close} />
      </Dialog>
    </>
  )
}

function VoidForm({ paymentId, onDone }: { paymentId: string; onDone: () => void }) {
  const form = useActionForm(voidPaymentSchema, voidPaymentAction, {
    defaultValues: { paymentId, reason: '' },
    onDone,
  })
  return (
    <ActionForm form={form} submitLabel="Void the payment">
      <p>It was entered by mistake and does not count any more. It stays on record, with its receipt.</p>
      <TextInput label="Reason" required {...form.text('reason')} />
    </ActionForm>
  )
}
