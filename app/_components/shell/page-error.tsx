'use client'
import { useEffect, useState, type ReactNode } from 'react'
import { Button } from '../ui/button'

export type PageErrorProps = { error: Error & { digest?: string }; reset: () => void }

/** A page that failed while it was made. `help`: who can do something with the number. `children`: other ways on. */
export function PageError({
  error,
  reset,
  advice,
  help = 'whoever looks after Brasstag',
  children,
}: PageErrorProps & { advice: string; help?: string; children?: ReactNode }) {
  const why = useWhy()
  return (
    <>
      <h1>This page could not be shown</h1>
      <p aria-live="polite">{why ?? advice}</p>
      {error.digest && (
        <p className="soft">
          Give this number to {help}: {error.digest}
        </p>
      )}
      <div className="row">
        <Button variant="main" onClick={reset}>
          Try again
        </Button>
        {children}
      </div>
    </>
  )
}

/** What is wrong with the disk or the database, where that is why; the error itself does not come to the browser. */
function useWhy(): string | null {
  const [why, setWhy] = useState<string | null>(null)
  useEffect(() => {
    fetch('/api/health')
      .then((answer) => answer.json())
      .then(({ message }: { message?: string }) => setWhy(message ?? null))
      .catch(() => {})
  }, [])
  return why
}
