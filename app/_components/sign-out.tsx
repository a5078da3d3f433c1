'use client'
import { useState } from 'react'
import { forgetAll } from './form/draft-store'
import { Button } from './ui/button'

/**
 * Ends the session here and in the database, and what this device kept of unfinished forms. The code for it comes with the
 * tap: every page has the button, and few taps it.
 */
export function SignOut() {
  const [failed, setFailed] = useState(false)
  async function leave() {
    const [auth, forget] = await Promise.all([import('next-auth/react'), import('./outbox/forget')]).catch(() => [])
    setFailed(!auth || !forget)
    if (!auth || !forget) return
    forgetAll()
    await forget.forgetWhatWasRead()
    await auth.signOut({ callbackUrl: '/sign-in' })
  }
  return (
    <>
      <Button variant="quiet" onClick={() => void leave()}>
        Sign out
      </Button>
      {failed && <span role="alert">No connection. Try again.</span>}
    </>
  )
}
