import { Day } from '@/app/_components/ui/day'
import { daysText } from '@/lib/core/shop/when-words'
import { Phone } from '@/app/_components/ui/phone'
import { Sign } from '@/app/_components/ui/sign'

/** Heading of an order's page: whose it is, and their telephone. */
export function OrderHeading({ title, phone }: { title: string; phone: string }) {
  return (
    <div className="row spread">
      <h1>{title}</h1>
      <Phone number={phone} />
    </div>
  )
}

type Promised = { readonly promisedOn: string | null; readonly daysLate: number }

/** "late by 3 days", "promised Tue, Nov 24", "no promise date". */
export function PromiseState({ order: { promisedOn, daysLate }, locale }: { order: Promised; locale: string }) {
  const promised = promisedOn && (
    <>
      promised <Day on={promisedOn} locale={locale} />
    </>
  )
  if (daysLate <= 0) return promised ?? 'no promise date'
  return (
    <>
      <Sign kind="caution" /> {daysText(daysLate)} late{promised && ', '}
      {promised}
    </>
  )
}

type PromiseLine = { readonly id: string; readonly on: string; readonly note: string }

/** Every day that was promised for an order, first to last. */
export function Promises({ promises, locale }: { promises: readonly PromiseLine[]; locale: string }) {
  if (promises.length === 0) return null
  return (
    <section className="stack part" aria-label="Promised dates">
      <h2>Promised dates</h2>
      <ol>
        {promises.map(({ id, on, note }) => (
          <li key={id}>
            <Day on={on} locale={locale} /> {note !== '' && `(${note})`}
          </li>
        ))}
      </ol>
    </section>
  )
}
