'use client'
import { signOut } from 'next-auth/react'
import { forgetAll } from './form/draft-store'
import { Button } from './ui/button'

/** Ends the session here and in the database, and what this device kept of unfinished forms. */
export function SignOut() {
  return (
    <Button
      variant="quiet"
      onClick={async () => {
        forgetAll()
        await signOut({ callbackUrl: '/sign-in' })
      }}
    >
      Sign out
    </Button>
  )
}
