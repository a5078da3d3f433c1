import { requirePerson } from '@/lib/web/require-actor'
import { BackLink } from '../../_components/back-link'
import { AddInstrumentForm } from '../_components/instrument-forms'

export const metadata = { title: 'Add an instrument' }

export default async function AddInstrumentPage() {
  await requirePerson('settings.change')
  return (
    <>
      <div className="stack">
        <BackLink href="/back-room/instruments">Instruments</BackLink>
        <h1>Add an instrument</h1>
      </div>
      <AddInstrumentForm />
    </>
  )
}
