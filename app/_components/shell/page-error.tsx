'use client'
import type { ReactNode } from 'react'
import { Button } from '../ui/button'

export type PageErrorProps = { error: Error & { digest?: string }; reset: () => void }

/** A page that failed while it was made. `children`: other ways on. */
export function PageError({
  error,
  reset,
  advice,
  children,
}: PageErrorProps & { advice: string; children?: ReactNode }) {
  return (
    <>
      <h1>This page could not be shown</h1>
      <p>{advice}</p>
      {error.digest && <p className="soft">Reference for the log: {error.digest}</p>}
      <div className="row">
        <Button variant="main" onClick={reset}>
          Try again
        </Button>
        {children}
      </div>
    </>
  )
}
