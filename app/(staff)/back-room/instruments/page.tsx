import Link from 'next/link'
import { ButtonLink } from '@/app/_components/ui/button-link'
import { EmptyState } from '@/app/_components/ui/empty-state'
import { Sign } from '@/app/_components/ui/sign'
import { Table } from '@/app/_components/ui/table'
import { seeInstruments, type InstrumentSeen } from '@/lib/use-cases/shop/see-instruments'
import { shopLocale } from '@/lib/use-cases/shop/shop-locale'
import { requirePerson } from '@/lib/web/require-actor'
import { BackLink } from '../_components/back-link'
import { Day } from '../_components/day'

export const metadata = { title: 'Instruments' }

const columns = [
  { id: 'name', label: 'Name', head: true },
  { id: 'kind', label: 'Kind' },
  { id: 'checked', label: 'Last checked' },
  { id: 'due', label: 'Next check due' },
]

const rowOf = (instrument: InstrumentSeen, locale: string) => ({
  id: instrument.id,
  cells: {
    name: <Link href={`/back-room/instruments/${instrument.id}`}>{instrument.name}</Link>,
    kind: instrument.retired ? 'no longer in use' : instrument.kind,
    checked: instrument.lastCheckedOn ? <Day day={instrument.lastCheckedOn} locale={locale} /> : 'never noted',
    due: instrument.dueOn && (
      <span className="nowrap">
        <Day day={instrument.dueOn} locale={locale} />
        {instrument.overdue && (
          <>
            {' '}
            <Sign kind="caution" /> overdue
          </>
        )}
      </span>
    ),
  },
})

export default async function InstrumentsPage() {
  const actor = await requirePerson('settings.change')
  const instruments = await seeInstruments(actor, new Date())
  const { locale } = await shopLocale()
  return (
    <>
      <div className="stack">
        <BackLink href="/back-room">Back room</BackLink>
        <div className="row spread">
          <h1>Instruments</h1>
          <ButtonLink href="/back-room/instruments/new" variant="main">
            Add an instrument
          </ButtonLink>
        </div>
      </div>
      <Table
        label="Instruments"
        columns={columns}
        rows={instruments.map((instrument) => rowOf(instrument, locale))}
        empty={
          <EmptyState title="No instruments yet">
            <p>Add the burette, the gauges and the flow bench: each reading then says what it was taken with.</p>
          </EmptyState>
        }
      />
    </>
  )
}
