import { Link } from '@/app/_components/ui/link'
import { PromiseDay } from '@/app/(staff)/counter/_components/promise-day'
import { Day } from '@/app/_components/ui/day'
import { Money } from '@/app/_components/ui/money'
import { Phone } from '@/app/_components/ui/phone'
import { Sign } from '@/app/_components/ui/sign'
import { TitleBlock, type TitleCell } from '@/app/_components/ui/title-block'
import { When } from '@/app/_components/ui/when'
import { presetLabels } from '@/lib/core/route/presets'
import type { Preset } from '@/lib/core/route/step-ids'
import { saidDay } from '@/lib/core/shop/when-words'
import type { JobView } from '@/lib/use-cases/jobs/see-job'
import { balanceLabel } from '@/lib/words/money'

/** What it is, whose, when it will be ready, when it was promised, what is owed. */
export function JobTitle({ job }: { job: JobView }) {
  const { account, finish, customer, locale } = job
  const promised = job.promiseOn === null ? null : saidDay(job.promiseOn, locale)
  const cells: (TitleCell | false)[] = [
    {
      label: 'Customer',
      value: customer.id === '' ? customer.name : <Link href={`/customers/${customer.id}`}>{customer.name}</Link>,
      note: (
        <div className="row">
          <Phone number={customer.phone} />
          {customer.email !== '' && <a href={`mailto:${customer.email}`}>{customer.email}</a>}
          {customer.address !== '' && <span>{customer.address}</span>}
        </div>
      ),
    },
    finish !== null && {
      label: 'Expected finish',
      main: true,
      value: (
        <>
          {finish.atRisk && <Sign kind="caution" />} <Day on={finish.middleOn} locale={locale} />
        </>
      ),
      note: (
        <>
          9 of 10 by <Day on={finish.nineOfTenOn} locale={locale} />, {finish.from}
          {finish.why !== '' && <p>Longest: {finish.why}</p>}
        </>
      ),
    },
    {
      label: 'Promised',
      value: <PromiseDay promised={promised} daysLeft={job.daysLeft} urgent={job.urgent} />,
      note: finish?.atRisk ? <strong>at risk</strong> : undefined,
    },
    account !== null && {
      label: account.balance.code === 'to-pay' ? 'Owed' : balanceLabel(account.balance),
      value: <Money minor={account.balance.minor} currency={job.currency} locale={locale} />,
    },
  ]
  return (
    <TitleBlock
      title={{
        label: 'Job',
        value: (
          <>
            <span className="visually-hidden">Job </span>
            {job.number}
            <span className="visually-hidden">, {customer.name}</span>
          </>
        ),
        note: (
          <>
            {presetLabels[job.preset as Preset]}, booked{' '}
            <When at={job.bookedAt} zone={job.timeZone} locale={locale} style="date" />
          </>
        ),
      }}
      cells={cells.filter((cell) => cell !== false)}
    />
  )
}
