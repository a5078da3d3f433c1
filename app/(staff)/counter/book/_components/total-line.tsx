'use client'
import { useWatch } from 'react-hook-form'
import { Money } from '@/app/_components/ui/money'
import { percentOf } from '@/lib/core/money/percent'
import { typedTotal } from '@/lib/core/money/typed-total'
import type { BookingView } from '@/lib/use-cases/jobs/see-booking'
import type { BookingActionForm } from './booking-action-form'
import styles from './booking.module.css'

type Props = {
  form: BookingActionForm
  booking: Pick<BookingView, 'taxes' | 'currency' | 'currencyExponent' | 'locale'>
}

/** What it comes to so far, with the tax by its rate and the deposit: beside the button, always in view. */
export function TotalLine({ form, booking }: Props) {
  const [lines, deposit] = useWatch({ control: form.form.control, name: ['prices', 'deposit'] })
  const { currency, locale } = booking
  if (lines.length === 0) return <p className="soft">No prices yet</p>
  const { totals, unread } = typedTotal(lines, deposit, booking.taxes, booking)
  const money = (minor: number) => <Money minor={minor} currency={currency} locale={locale} />
  return (
    <p role="status" className={styles.total}>
      <span>
        Total <strong className="figure">{money(totals.totalMinor)}</strong>
      </span>
      {totals.taxes.map(({ name, rateMillionths, taxMinor }) => (
        <span key={`${name} ${rateMillionths}`} className="soft">
          {name || 'Tax'} {percentOf(rateMillionths)} {money(taxMinor)}
        </span>
      ))}
      {totals.paidMinor > 0 && (
        <span>
          Deposit {money(totals.paidMinor)}, then {money(totals.dueMinor)}
        </span>
      )}
      {unread > 0 && <span>{unread === 1 ? '1 line has no price' : `${unread} lines have no price`}</span>}
    </p>
  )
}
