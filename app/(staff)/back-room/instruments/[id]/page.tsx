import { notFound } from 'next/navigation'
import { cache } from 'react'
import { seeInstruments } from '@/lib/use-cases/shop/see-instruments'
import { requirePerson } from '@/lib/web/require-actor'
import { PageHead } from '../../_components/page-head'
import { InstrumentForm } from '../_components/instrument-forms'

type Props = { params: Promise<{ id: string }> }

const see = cache(async (id: string) => {
  const all = await seeInstruments(await requirePerson('settings.change'), new Date())
  return all.find((one) => one.id === id) ?? notFound()
})

export async function generateMetadata({ params }: Props) {
  return { title: (await see((await params).id)).name }
}

export default async function InstrumentPage({ params }: Props) {
  const instrument = await see((await params).id)
  return (
    <>
      <PageHead up={['/back-room/instruments', 'Instruments']} title={instrument.name} />
      <InstrumentForm instrument={instrument} />
    </>
  )
}
