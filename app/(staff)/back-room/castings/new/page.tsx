import { newEntryPage } from '../../_components/entry-page'
import { AddCastingForm } from '../_components/casting-form'

const page = newEntryPage(
  'casting.change',
  ['/back-room/castings', 'Casting records'],
  'Add a casting',
  <AddCastingForm />,
)

export const metadata = page.metadata
export default page.Page
