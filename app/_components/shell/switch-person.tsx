'use client'
import { useState } from 'react'
import { Button } from '../ui/button'
import { leaveTablet } from './leave-tablet'

type Props = {
  /** Who is there: their first name is on the button. Left out: the button says what it does. */
  name?: string
}

/** In the place of "Sign out" on a tablet: back to the rack; what is typed waits for its person. */
export function SwitchPerson({ name }: Props) {
  const [stage, setStage] = useState<'idle' | 'pending' | 'failed'>('idle')
  async function leave() {
    setStage('pending')
    if (!(await leaveTablet('switched person'))) setStage('failed')
  }
  return (
    <>
      <Button
        variant="quiet"
        pending={stage === 'pending'}
        aria-label={name && `Switch person, ${name} is here`}
        onClick={() => void leave()}
      >
        {name?.split(' ')[0] ?? 'Switch person'}
      </Button>
      {stage === 'failed' && <span role="alert">No connection. Try again.</span>}
    </>
  )
}
