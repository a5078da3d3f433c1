'use client'
import { useState } from 'react'
import { ActionForm } from '@/app/_components/form/action-form'
import { useActionForm } from '@/app/_components/form/use-action-form'
import { TaxField, type TaxOption } from '@/app/_components/money/tax-field'
import { Button } from '@/app/_components/ui/button'
import { Dialog } from '@/app/_components/ui/dialog'
import { TextInput } from '@/app/_components/ui/text-input'
import { changePriceLineSchema, endPriceLineSchema, type ChangePriceLineForm } from '@/lib/schemas/job'
import { changePriceLineAction, endPriceLineAction } from '../actions'
import styles from './job.module.css'

/** A line as the form has it; a discount's amount is typed without a sign. */
export type LineToChange = Omit<ChangePriceLineForm, 'why'> & {
  readonly name: string
  readonly isDiscount: boolean
}

type Props = { line: LineToChange; currency: string; taxes: readonly TaxOption[] }

/** Changes or removes a line that is on no invoice yet; both ask for a reason. */
export function ChangePrice({ line, currency, taxes }: Props) {
  const [open, setOpen] = useState<'change' | 'remove' | null>(null)
  const close = () => setOpen(null)
  return (
    <>
      <div className={styles.lineDeeds}>
        <Button variant="quiet" onClick={() => setOpen('change')}>
          Change<span className="visually-hidden"> {line.name}</span>
        </Button>
        <Button variant="quiet" onClick={() => setOpen('remove')}>
          Remove<span className="visually-hidden"> {line.name}</span>
        </Button>
      </div>
      <Dialog open={open === 'change'} onClose={close} title={`Change “${line.name}”`} closeLabel="Cancel">
        <Change line={line} currency={currency} taxes={taxes} onDone={close} />
      </Dialog>
      <Dialog open={open === 'remove'} onClose={close} title={`Remove “${line.name}”`} closeLabel="Cancel">
        <Remove line={line} onDone={close} />
      </Dialog>
    </>
  )
}

function Change({ line, currency, taxes, onDone }: Props & { onDone: () => void }) {
  const { name: _name, isDiscount, ...values } = line
  const form = useActionForm(changePriceLineSchema, changePriceLineAction, {
    defaultValues: { ...values, why: '' },
    onDone,
  })
  return (
    <ActionForm form={form} submitLabel="Save">
      <TextInput label={isDiscount ? 'Discount for' : 'For'} {...form.text('text')} />
      {!isDiscount && <TextInput label="Quantity" inputMode="decimal" {...form.text('quantity')} />}
      <TextInput
        label={`${isDiscount ? 'Discount' : 'Each'}, ${currency}`}
        inputMode="decimal"
        {...form.text('unitPrice')}
      />
      <TaxField taxes={taxes} also={[line.tax]} control={form.text('tax')} />
      <TextInput label="Reason for the change" required {...form.text('why')} />
    </ActionForm>
  )
}

function Remove({ line, onDone }: { line: LineToChange; onDone: () => void }) {
  const form = useActionForm(endPriceLineSchema, endPriceLineAction, {
    defaultValues: { jobId: line.jobId, lineId: line.lineId, why: '' },
    onDone,
  })
  return (
    <ActionForm form={form} submitLabel="Remove">
      <TextInput label="Reason" required {...form.text('why')} />
    </ActionForm>
  )
}
