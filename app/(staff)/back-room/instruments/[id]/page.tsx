import { notFound } from 'next/navigation'
import { seeInstruments } from '@/lib/use-cases/shop/see-instruments'
import { requirePerson } from '@/lib/web/require-actor'
import { BackLink } from '../../_components/back-link'
import { InstrumentForm } from '../_components/instrument-forms'

export const metadata = { title: 'Instrument' }

export default async function InstrumentPage({ params }: { params: Promise<{ id: string }> }) {
  const { id } = await params
  const actor = await requirePerson('settings.change')
  const instrument = (await seeInstruments(actor, new Date())).find((one) => one.id === id) ?? notFound()
  return (
    <>
      <div className="stack">
        <BackLink href="/back-room/instruments">Instruments</BackLink>
        <h1>{instrument.name}</h1>
      </div>
      <InstrumentForm instrument={instrument} />
    </>
  )
}
