import { cache } from 'react'
import { seeInstrument } from '@/lib/use-cases/shop/see-instruments'
import { orNotFound } from '@/lib/web/or-not-found'
import { requirePerson } from '@/lib/web/require-actor'
import { PageHead } from '../../_components/page-head'
import { InstrumentForm } from '../_components/instrument-forms'

type Props = { params: Promise<{ id: string }> }

const see = cache(async (id: string) =>
  orNotFound(seeInstrument(await requirePerson('settings.change'), id, new Date())),
)

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
