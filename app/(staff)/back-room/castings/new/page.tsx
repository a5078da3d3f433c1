import { StaffShell } from '@/app/_components/staff-shell'
import { requirePerson } from '@/lib/web/require-actor'
import { BackLink } from '../../_components/back-link'
import { AddCastingForm } from '../_components/casting-form'

export const metadata = { title: 'Add a casting' }

export default async function AddCastingPage() {
  const actor = await requirePerson('casting.change', '/back-room/castings/new')
  return (
    <StaffShell place="back-room" actor={actor}>
      <div className="stack">
        <BackLink href="/back-room/castings">Casting records</BackLink>
        <h1>Add a casting</h1>
      </div>
      <AddCastingForm />
    </StaffShell>
  )
}
