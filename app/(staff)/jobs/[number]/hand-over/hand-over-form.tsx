'use client'
import { useState } from 'react'
import { useWatch } from 'react-hook-form'
import type { z } from 'zod'
import { ActionForm } from '@/app/_components/form/action-form'
import { PaymentFields } from '@/app/_components/money/payment-fields'
import { useActionForm, type ActionForm as Form } from '@/app/_components/form/use-action-form'
import { CheckList } from '@/app/_components/ui/choice'
import { Notice } from '@/app/_components/ui/notice'
import { TextInput } from '@/app/_components/ui/text-input'
import { toggled } from '@/app/_components/ui/toggled'
import styles from '@/app/(staff)/counter/book/_components/booking.module.css'
import { handOverSchema } from '@/lib/schemas/release'
import type { HandedOver } from '@/lib/use-cases/hand-over/hand-over'
import { handOverAction } from './actions'

type Head = {
  readonly visitId: string
  readonly tag: string
  readonly side: string
  readonly cameWith: string
}
type Props = {
  jobId: string
  heads: readonly Head[]
  currency: string
  /** What is owed, as it is typed; '' when nothing is. */
  owed: string
  mayGoUnpaid: boolean
}

/** Who takes which heads, which side each goes on, and what goes back with them. */
export function HandOverForm({ jobId, heads, currency, owed, mayGoUnpaid }: Props) {
  const line = ({ visitId, side }: Head) => ({ visitId, side, partsBack: '' })
  const [going, setGoing] = useState<readonly string[]>(heads.map((head) => head.visitId))
  const form = useActionForm(handOverSchema, handOverAction, {
    defaultValues: {
      ...{ jobId, takenBy: '', note: '', unpaidReason: '' },
      payment: { amount: owed, method: 'cash', how: '', confirmed: false },
      heads: heads.map(line),
    },
  })
  const { setValue, watch } = form.form
  const lines = watch('heads')

  function pick(ids: readonly string[]) {
    setGoing(ids)
    const chosen = heads.filter((head) => ids.includes(head.visitId))
    setValue(
      'heads',
      chosen.map((head) => lines.find((entry) => entry.visitId === head.visitId) ?? line(head)),
    )
  }

  if (form.value && heads.length === 0) return <Notice title="Handed over">{form.value.tags.join(', ')}</Notice>
  return (
    <ActionForm form={form} submitLabel="Hand over">
      <CheckList
        label="Which heads go"
        name="going"
        values={[...going]}
        onChange={(event) => pick(toggled(going, event.target))}
        options={heads.map((head) => ({ value: head.visitId, label: head.tag }))}
        error={form.form.formState.errors.heads?.message ?? form.form.formState.errors.heads?.root?.message}
      />
      <TextInput label="Picked up by" required {...form.text('takenBy')} />
      {lines.map((entry, place) => {
        const head = heads.find((candidate) => candidate.visitId === entry.visitId)
        return (
          <fieldset key={entry.visitId} className="stack">
            <legend>{head?.tag}</legend>
            <TextInput
              label="Bank or side"
              hint="Left bank, right bank, fits either side, the only head, or “not said”."
              required
              {...form.text(`heads.${place}.side`)}
            />
            <TextInput
              label="Parts and cores that go back with it"
              hint={
                head?.cameWith
                  ? `It came with: ${head.cameWith}. Empty: nothing goes back.`
                  : 'Empty: nothing goes back.'
              }
              required={false}
              {...form.text(`heads.${place}.partsBack`)}
            />
          </fieldset>
        )
      })}
      <TextInput label="Note" required={false} {...form.text('note')} />
      {owed !== '' && <PaymentPart form={form} currency={currency} mayGoUnpaid={mayGoUnpaid} />}
    </ActionForm>
  )
}

type PaymentProps = {
  form: Form<z.input<typeof handOverSchema>, HandedOver>
  currency: string
  mayGoUnpaid: boolean
}

/** The payment that is taken as the heads go; the owner may let them go without. */
function PaymentPart({ form, currency, mayGoUnpaid }: PaymentProps) {
  const confirmed = useWatch({ control: form.form.control, name: 'payment.confirmed' })
  const asksTwice = confirmed || form.form.formState.errors.payment?.confirmed !== undefined
  return (
    <fieldset className="stack">
      <legend>Payment</legend>
      <div className={styles.line}>
        <PaymentFields
          currency={currency}
          asksTwice={asksTwice}
          amount={form.text('payment.amount')}
          method={form.text('payment.method')}
          how={form.text('payment.how')}
          confirmed={form.text('payment.confirmed')}
        />
      </div>
      {mayGoUnpaid && (
        <TextInput
          label="Reason to hand over unpaid"
          hint="Only with something left to pay: empty the amount, or take part of it. It stays under unpaid."
          required={false}
          {...form.text('unpaidReason')}
        />
      )}
    </fieldset>
  )
}
