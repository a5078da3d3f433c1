import { newEntryPage } from '../../_components/entry-page'
import { AddInstrumentForm } from '../_components/instrument-forms'

const page = newEntryPage(
  'settings.change',
  ['/back-room/instruments', 'Instruments'],
  'Add an instrument',
  <AddInstrumentForm />,
)

export const metadata = page.metadata
export default page.Page
