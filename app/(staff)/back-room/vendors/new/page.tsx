import { newEntryPage } from '../../_components/entry-page'
import { AddVendorForm } from '../_components/vendor-forms'

const page = newEntryPage('vendor.change', ['/back-room/vendors', 'Vendors'], 'Add a vendor', <AddVendorForm />)

export const metadata = page.metadata
export default page.Page
