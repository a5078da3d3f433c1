import { requirePerson } from '@/lib/web/require-actor'
import { BackLink } from '../../_components/back-link'
import { AddCastingForm } from '../_components/casting-form'

export const metadata = { title: 'Add a casting' }

export default async function AddCastingPage() {
  await requirePerson('casting.change')
  return (
    <>
      <div className="stack">
        <BackLink href="/back-room/castings">Casting records</BackLink>
        <h1>Add a casting</h1>
      </div>
      <AddCastingForm />
    </>
  )
}
