import { requirePerson } from '@/lib/web/require-actor'
import { PageHead } from '../../_components/page-head'
import { AddCastingForm } from '../_components/casting-form'

export const metadata = { title: 'Add a casting' }

export default async function AddCastingPage() {
  await requirePerson('casting.change')
  return (
    <>
      <PageHead up={['/back-room/castings', 'Casting records']} title="Add a casting" />
      <AddCastingForm />
    </>
  )
}
