'use client'
import { useWatch } from 'react-hook-form'
import { ActionForm } from '@/app/_components/form/action-form'
import { useActionForm, type ActionForm as Form } from '@/app/_components/form/use-action-form'
import { firstTax, TaxField } from '@/app/_components/money/tax-field'
import { CheckList, Choice } from '@/app/_components/ui/choice'
import { TextInput } from '@/app/_components/ui/text-input'
import { ConflictResolver } from '@/app/(staff)/back-room/_components/conflict-resolver'
import { ActionButton } from '@/app/(staff)/back-room/_components/action-button'
import styles from '@/app/(staff)/counter/book/_components/booking.module.css'
import { workLabel } from '@/lib/core/route/presets'
import type { RouteRules } from '@/lib/core/route/rules'
import { orderableWork } from '@/lib/core/shop/orderable-work'
import { answerFindingSchema, changeAnswerSchema, type AnswerFindingForm } from '@/lib/schemas/finding'
import type { FindingView } from '@/lib/use-cases/findings/see-finding'
import { answerFindingAction, askFindingAction, changeAnswerAction } from '../actions'

const workOf = (rules: RouteRules) =>
  orderableWork(rules).flatMap((group) => group.work.map((id) => ({ value: id, label: workLabel(id, rules) })))

const answers = [
  { value: 'yes', label: 'yes, do it' },
  { value: 'no', label: 'no, leave it' },
]

const valuesOf = (finding: FindingView) => ({
  findingId: finding.id,
  version: finding.version,
  price: finding.price,
  addsWork: [...finding.addsWork],
  how: finding.how,
  answeredBy: finding.customer,
  // Nothing was asked yet: the shop's own tax, as on any new line.
  tax: finding.askedAt === null && finding.price === '' ? firstTax(finding.taxes) : finding.tax,
})

const labels: Readonly<Record<string, string>> = {
  price: 'price',
  tax: 'tax',
  how: 'how it was asked',
  addsWork: 'work that a yes adds',
  answer: 'answer',
  answeredBy: 'who answered',
}

/** What the customer was asked, and the answer when there is one. */
export function AnswerForm({ finding }: { finding: FindingView }) {
  const fresh = valuesOf(finding)
  const form = useActionForm(answerFindingSchema, answerFindingAction, { defaultValues: fresh })
  return (
    <ActionForm form={form} submitLabel="Keep the answer" actions={<Asked form={form} finding={finding} />}>
      <div className={styles.fields}>
        <TextInput
          label={`Price, ${finding.currency}`}
          hint="0: costs nothing; empty: not known yet"
          inputMode="decimal"
          {...form.text('price')}
        />
        <TaxField taxes={finding.taxes} also={[finding.tax]} control={form.text('tax')} />
        <TextInput label="How it was asked" hint="phone, message, link, at the counter…" {...form.text('how')} />
      </div>
      <details>
        <summary>Work that a yes adds</summary>
        <CheckList label="Added to the head’s order" options={workOf(finding.rules)} {...form.text('addsWork')} />
      </details>
      <Choice label="The customer’s answer" options={answers} {...form.text('answer')} />
      <TextInput label="Who answered" {...form.text('answeredBy')} />
      <ConflictResolver form={form} fresh={fresh} what="The question" labelOf={(path) => labels[path] ?? path} by="" />
    </ActionForm>
  )
}

/** Another answer in the place of the one that stands. The first one stays on record. */
export function ChangeAnswer({ finding }: { finding: FindingView }) {
  const other = finding.answer === 'yes' ? 'no' : 'yes'
  const form = useActionForm(changeAnswerSchema, changeAnswerAction, {
    defaultValues: { ...valuesOf(finding), answer: other, reason: '' },
  })
  return (
    <details>
      <summary>Change the answer</summary>
      <ActionForm form={form} submitLabel="Save the new answer">
        <p>
          {finding.answer === 'yes'
            ? 'The work and the price that the yes added are removed.'
            : 'The work and the price are added.'}
        </p>
        <div className={styles.fields}>
          <Choice label="The customer’s answer" options={answers} {...form.text('answer')} />
          <TextInput label="Who answered" {...form.text('answeredBy')} />
          <TextInput label={`Price, ${finding.currency}`} inputMode="decimal" {...form.text('price')} />
          <TextInput label="Reason" required {...form.text('reason')} />
        </div>
      </ActionForm>
    </details>
  )
}

type AskedProps = { form: Form<AnswerFindingForm, { id: string }>; finding: FindingView }

/** The call went unanswered: what was asked is kept, the answer is still to come. */
function Asked({ form, finding }: AskedProps) {
  const [price, tax, addsWork, how] = useWatch({
    control: form.form.control,
    name: ['price', 'tax', 'addsWork', 'how'],
  })
  return (
    <ActionButton
      action={askFindingAction}
      input={{ findingId: finding.id, version: finding.version, price, tax, addsWork, how }}
      onDone={() => form.form.reset(form.form.getValues())}
    >
      Asked, no answer yet
    </ActionButton>
  )
}
