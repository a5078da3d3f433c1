import Link from 'next/link'
import { PromiseDay } from '@/app/(staff)/counter/_components/promise-day'
import { DefinitionList, type Definition } from '@/app/_components/ui/definition-list'
import { Money } from '@/app/_components/ui/money'
import { Phone } from '@/app/_components/ui/phone'
import { When } from '@/app/_components/ui/when'
import { presetLabels } from '@/lib/core/route/presets'
import type { Preset } from '@/lib/core/route/step-ids'
import type { JobView } from '@/lib/use-cases/jobs/see-job'
import { balanceLabel } from '@/lib/words/money'
import { ChangeJob } from './change-job'
import styles from './job.module.css'

/** Who it is for, by when, and what was agreed for the whole job. */
export function JobHeader({ job }: { job: JobView }) {
  return (
    <>
      <div className="row spread">
        <h1>
          Job {job.number},{' '}
          {job.customer.id === '' ? (
            job.customer.name
          ) : (
            <Link href={`/customers/${job.customer.id}`}>{job.customer.name}</Link>
          )}
        </h1>
        <PromiseDay on={job.promiseOn} daysLeft={job.daysLeft} urgent={job.urgent} locale={job.locale} />
      </div>
      <div className="row">
        <Phone number={job.customer.phone} />
        {job.customer.email !== '' && <a href={`mailto:${job.customer.email}`}>{job.customer.email}</a>}
        {job.customer.address !== '' && <span>{job.customer.address}</span>}
        <span className="soft">
          {presetLabels[job.preset as Preset]}, booked{' '}
          <When at={job.bookedAt} zone={job.timeZone} locale={job.locale} style="date" />
        </span>
      </div>
      {job.note !== '' && <p className={styles.note}>{job.note}</p>}
      <From from={job.from} />
      <Agreed job={job} />
      {job.may.change && <ChangeJob job={job} />}
    </>
  )
}

/** The answer of the cut bench that it was booked from. */
function From({ from: { estimate, benchQuery } }: Pick<JobView, 'from'>) {
  if (estimate) {
    return (
      <p>
        Booked from <Link href={`/cut-bench/kept/${estimate.id}`}>estimate {estimate.number}</Link>
      </p>
    )
  }
  if (benchQuery === '') return null
  return (
    <p>
      Booked from <Link href={`/cut-bench?${benchQuery}`}>the cut bench</Link>
    </p>
  )
}

function Agreed({ job }: { job: JobView }) {
  const { flatOnly, minCc, maxCut } = job.classLimits
  const { account } = job
  const agreed: (Definition | false)[] = [
    account !== null && {
      label: account.balance.code === 'to-pay' ? 'Owed' : balanceLabel(account.balance),
      value: <Money minor={account.balance.minor} currency={job.currency} locale={job.locale} />,
    },
    flatOnly && { label: 'Class', value: 'flat cuts only' },
    minCc !== '' && { label: 'Smallest chamber', value: minCc },
    maxCut !== '' && { label: 'Deepest cut', value: maxCut },
    job.finishAsked !== '' && { label: 'Deck finish asked', value: job.finishAsked },
    job.partsPlace !== '' && { label: 'Parts are kept', value: job.partsPlace },
  ]
  const items = agreed.filter((item) => item !== false)
  return items.length === 0 ? null : <DefinitionList items={items} />
}
