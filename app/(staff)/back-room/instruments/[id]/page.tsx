import { seeInstrument } from '@/lib/use-cases/shop/see-instruments'
import { entryPage } from '../../_components/entry-page'
import { PageHead } from '../../_components/page-head'
import { InstrumentForm } from '../_components/instrument-forms'

const page = entryPage(
  'settings.change',
  (actor, id) => seeInstrument(actor, id, new Date()),
  ({ instrument }) => instrument.name,
)

export const generateMetadata = page.generateMetadata

export default async function InstrumentPage(props: Parameters<typeof page.see>[0]) {
  const { instrument } = await page.see(props)
  return (
    <>
      <PageHead up={['/back-room/instruments', 'Instruments']} title={instrument.name} />
      <InstrumentForm instrument={instrument} />
    </>
  )
}
