import { Link } from '@/app/_components/ui/link'
import { Tag } from '@/app/_components/tag/tag'
import { Day } from '@/app/_components/ui/day'
import { Money } from '@/app/_components/ui/money'
import { Table } from '@/app/_components/ui/table'
import { When } from '@/app/_components/ui/when'
import type { CustomerView } from '@/lib/use-cases/customers/see-customer'

const columns = [
  { id: 'job', label: 'Job', head: true },
  { id: 'heads', label: 'Heads' },
  { id: 'promise', label: 'Promised' },
  { id: 'booked', label: 'Booked' },
]
const owed = { id: 'owed', label: 'Owed', figure: true }

/** What was booked, the newest first. */
export function CustomerJobs({ customer }: { customer: CustomerView }) {
  const { jobs, timeZone, locale, currency, sums } = customer
  return (
    <section aria-label="Jobs">
      <h2>Jobs</h2>
      <Table
        label="Jobs"
        columns={sums.owedMinor === null ? columns : [...columns, owed]}
        rows={jobs.map((job) => ({
          id: job.number,
          cells: {
            job: (
              <Link href={`/jobs/${job.number}`} className="nowrap">
                {job.number}
              </Link>
            ),
            heads: job.heads.map(({ headId, tag, whereabouts }) => (
              <div key={headId} className="row">
                {tag === '' ? (
                  <Link href={`/heads/${headId}`}>no tag</Link>
                ) : (
                  <Tag number={tag} size="s" href={`/heads/${headId}`} />
                )}
                <span className="soft">{whereabouts}</span>
              </div>
            )),
            promise: job.promiseOn && <Day on={job.promiseOn} locale={locale} />,
            booked: <When at={job.bookedAt} zone={timeZone} locale={locale} style="date" />,
            owed: job.owedMinor !== null && job.owedMinor !== 0 && (
              <Money minor={job.owedMinor} currency={currency} locale={locale} />
            ),
          },
        }))}
        empty={<p className="soft">No job was booked yet.</p>}
      />
    </section>
  )
}
