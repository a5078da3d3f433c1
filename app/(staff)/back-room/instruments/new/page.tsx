import { requirePerson } from '@/lib/web/require-actor'
import { PageHead } from '../../_components/page-head'
import { AddInstrumentForm } from '../_components/instrument-forms'

export const metadata = { title: 'Add an instrument' }

export default async function AddInstrumentPage() {
  await requirePerson('settings.change')
  return (
    <>
      <PageHead up={['/back-room/instruments', 'Instruments']} title="Add an instrument" />
      <AddInstrumentForm />
    </>
  )
}
