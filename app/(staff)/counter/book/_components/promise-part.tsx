import { useWatch } from 'react-hook-form'
import { ProposedPromise } from '@/app/_components/promise/proposed-promise'
import { Check } from '@/app/_components/ui/check'
import { TextInput } from '@/app/_components/ui/text-input'
import type { BookJobForm } from '@/lib/schemas/job'
import type { ProposePromiseForm } from '@/lib/schemas/promise'
import type { BookingActionForm } from './booking-action-form'

/** The day that is promised, and beside it the day that the shop's own record proposes. */
export function PromisePart({ form, today, locale }: { form: BookingActionForm; today: string; locale: string }) {
  const { control, setValue } = form.form
  const [heads, ordered, urgent, promiseOn] = useWatch({ control, name: ['heads', 'ordered', 'urgent', 'promiseOn'] })
  return (
    <section className="part" aria-label="Promise">
      <h2>Promise</h2>
      <div className="row">
        <TextInput label="Promise date" type="date" min={today} {...form.text('promiseOn')} />
        <Check label="Urgent" {...form.text('urgent')} />
      </div>
      <ProposedPromise
        asked={askedOf({ heads, ordered, urgent })}
        locale={locale}
        value={promiseOn}
        onUse={(day) => setValue('promiseOn', day, { shouldDirty: true, shouldTouch: true, shouldValidate: true })}
      />
    </section>
  )
}

const flag = (isSo: boolean): '0' | '1' => (isSo ? '1' : '0')

/** Of several heads, all that any of them brings: the job is ready when the last one is. */
function askedOf({ heads, ordered, urgent }: Pick<BookJobForm, 'heads' | 'ordered' | 'urgent'>): ProposePromiseForm {
  return {
    source: heads.find(({ source }) => source !== 'customer')?.source ?? 'customer',
    used: flag(heads.some(({ used }) => used)),
    cameAssembled: flag(heads.some(({ cameAssembled }) => cameAssembled)),
    overheated: flag(heads.some(({ overheated }) => overheated)),
    urgent: flag(urgent),
    ordered: ordered.map(({ work }) => work).join(','),
  }
}
