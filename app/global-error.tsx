'use client'
import { barlow, barlowCondensed } from './_components/fonts'
import { PublicShell } from './_components/shell/public-shell'
import { Button } from './_components/ui/button'
import './globals.css'

/** Stands in for the whole document when the frame itself fails. */
export default function GlobalError({ error, reset }: { error: Error & { digest?: string }; reset: () => void }) {
  return (
    <html lang="en" className={`${barlow.variable} ${barlowCondensed.variable}`}>
      <body>
        <title>Brasstag could not start this page</title>
        <PublicShell narrow>
          <h1>Brasstag could not start this page</h1>
          <p>What was saved before is safe. Try again; if it happens twice, tell the owner.</p>
          {error.digest && <p className="soft">Reference for the log: {error.digest}</p>}
          <div className="row">
            <Button variant="main" onClick={reset}>
              Try again
            </Button>
          </div>
        </PublicShell>
      </body>
    </html>
  )
}
