import { Check } from '@/app/_components/ui/check'
import { Select } from '@/app/_components/ui/select'
import { TextInput } from '@/app/_components/ui/text-input'
import { paymentMethods } from '@/lib/core/money/payment'
import { paymentMethodWords } from '@/lib/words/money'

const methods = paymentMethods.map((value) => ({ value, label: paymentMethodWords[value] }))

type Props<Control extends object> = {
  currency: string
  /** Whether more than is owed was asked about: then it can be said that it is meant. */
  asksTwice: boolean
  amount: Control
  method: Control
  how: Control
  confirmed: Control
}

/** Amount, method, note; and the second question when it is more than is owed. */
export function PaymentFields<Control extends object>(props: Props<Control>) {
  const { currency, asksTwice, amount, method, how, confirmed } = props
  return (
    <>
      <TextInput label={`Amount, ${currency}`} inputMode="decimal" autoComplete="off" {...amount} />
      <Select label="Paid by" options={methods} {...method} />
      <TextInput label="Note" placeholder="check number…" required={false} {...how} />
      {asksTwice && <Check label="Take more than is owed" {...confirmed} />}
    </>
  )
}
