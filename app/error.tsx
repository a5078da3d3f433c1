'use client'
import { PublicShell } from './_components/shell/public-shell'
import { Button } from './_components/ui/button'
import { ButtonLink } from './_components/ui/button-link'

export default function PageError({ error, reset }: { error: Error & { digest?: string }; reset: () => void }) {
  return (
    <PublicShell narrow>
      <h1>This page could not be shown</h1>
      <p>What was saved before is safe. Try again; if it happens twice, tell the owner.</p>
      {error.digest && <p className="soft">Reference for the log: {error.digest}</p>}
      <div className="row">
        <Button variant="main" onClick={reset}>
          Try again
        </Button>
        <ButtonLink href="/">Go to the start</ButtonLink>
      </div>
    </PublicShell>
  )
}
