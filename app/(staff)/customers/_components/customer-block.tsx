import { Money } from '@/app/_components/ui/money'
import { Phone } from '@/app/_components/ui/phone'
import { TitleBlock, type TitleCell } from '@/app/_components/ui/title-block'
import { When } from '@/app/_components/ui/when'
import type { CustomerView } from '@/lib/use-cases/customers/see-customer'

/** Who it is, how to reach them, and how they stand with the shop. */
export function CustomerBlock({ customer }: { customer: CustomerView }) {
  const { contact, sums, since, timeZone, locale, currency } = customer
  const cells: (TitleCell | false)[] = [
    contact.blankedAt === null && {
      label: 'Phone',
      value: <Phone number={contact.phone} />,
      note: contact.otherPhone !== '' && <Phone number={contact.otherPhone} />,
    },
    (contact.email !== '' || contact.address !== '') && {
      label: 'E-mail and address',
      value: '',
      note: (
        <>
          {contact.email !== '' && <a href={`mailto:${contact.email}`}>{contact.email}</a>}
          {contact.address !== '' && <p>{contact.address}</p>}
        </>
      ),
    },
    {
      label: 'Open jobs',
      value: sums.open,
      note: `of ${sums.jobs}`,
    },
    sums.owedMinor !== null && {
      label: sums.owedMinor < 0 ? 'We owe the customer' : 'Owed',
      value: <Money minor={Math.abs(sums.owedMinor)} currency={currency} locale={locale} />,
      main: sums.owedMinor !== 0,
    },
    { label: 'Customer since', value: <When at={since} zone={timeZone} locale={locale} style="date" /> },
  ]
  return (
    <>
      <TitleBlock
        title={{ label: 'Customer', value: contact.name, note: contact.note }}
        cells={cells.filter((cell) => cell !== false)}
      />
      {contact.blankedAt && (
        <p>
          Personal data removed on <When at={contact.blankedAt} zone={timeZone} locale={locale} style="date" />.
          Invoices, receipts and spec sheets stay as they were handed out, as the law on books asks. Names in calls,
          answers and hand-overs stay as they were written.
        </p>
      )}
    </>
  )
}
