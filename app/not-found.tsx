import type { Metadata } from 'next'
import { PublicShell } from './_components/shell/public-shell'
import { ButtonLink } from './_components/ui/button-link'

export const metadata: Metadata = { title: 'Not here' }

export default function NotFound() {
  return (
    <PublicShell narrow>
      <h1>There is nothing at this address</h1>
      <p>The number may be mistyped, the link may have run out, or it is not yours to see.</p>
      <div className="row">
        <ButtonLink href="/" variant="main">
          Go to the start
        </ButtonLink>
      </div>
    </PublicShell>
  )
}
