import type { Metadata } from 'next'
import { NothingHere } from './_components/shell/nothing-here'
import { PublicShell } from './_components/shell/public-shell'
import { StaffShell } from './_components/shell/staff-shell'
import { ButtonLink } from './_components/ui/button-link'
import { currentSession } from '@/lib/web/require-actor'

export const metadata: Metadata = { title: 'Page not found' }

/** An address that no page has. */
export default async function NotFound() {
  const session = await currentSession()
  if (session) {
    return (
      <StaffShell {...session}>
        <NothingHere />
      </StaffShell>
    )
  }
  return (
    <PublicShell narrow>
      <h1>Page not found</h1>
      <p>The address may be mistyped.</p>
      <div className="row">
        <ButtonLink href="/sign-in" variant="main">
          Sign in
        </ButtonLink>
      </div>
    </PublicShell>
  )
}
