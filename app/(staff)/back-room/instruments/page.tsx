import { Day } from '@/app/_components/ui/day'
import { Sign } from '@/app/_components/ui/sign'
import { seeInstruments } from '@/lib/use-cases/shop/see-instruments'
import { shopLocale } from '@/lib/use-cases/shop/shop-locale'
import { pageOf, type ListProps } from '@/lib/web/page-of'
import { requirePerson } from '@/lib/web/require-actor'
import { Register } from '../_components/register'

export const metadata = { title: 'Instruments' }

export default async function InstrumentsPage({ searchParams }: ListProps) {
  const page = pageOf((await searchParams).page)
  const actor = await requirePerson('settings.change')
  const [list, { locale }] = await Promise.all([seeInstruments(actor, new Date(), page), shopLocale()])
  return (
    <Register
      title="Instruments"
      href="/back-room/instruments"
      add="Add an instrument"
      columns={[
        { id: 'name', label: 'Name' },
        { id: 'kind', label: 'Kind' },
        { id: 'checked', label: 'Last checked' },
        { id: 'due', label: 'Next check due' },
      ]}
      list={list}
      page={page}
      nameOf={({ name }) => name}
      cellsOf={({ kind, lastCheckedOn, dueOn, overdue }) => ({
        kind,
        checked: lastCheckedOn ? <Day on={lastCheckedOn} locale={locale} style="date" /> : 'not recorded',
        due: dueOn && (
          <span className="nowrap">
            <Day on={dueOn} locale={locale} style="date" />
            {overdue && (
              <>
                {' '}
                <Sign kind="caution" /> overdue
              </>
            )}
          </span>
        ),
      })}
      empty="No instruments yet. Add burettes, gauges and flow benches: each reading then names the one it was taken with."
    />
  )
}
