import { newEntryPage } from '../../_components/entry-page'
import { AddTaxForm } from '../_components/tax-forms'

const page = newEntryPage('settings.change', ['/back-room/taxes', 'Tax'], 'Add a tax', <AddTaxForm />)

export const metadata = page.metadata
export default page.Page
