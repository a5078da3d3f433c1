import { newEntryPage } from '../../_components/entry-page'
import { AddPersonForm } from '../_components/add-person-form'

const page = newEntryPage('person.change', ['/back-room/people', 'People'], 'Add a person', <AddPersonForm />)

export const metadata = page.metadata
export default page.Page
