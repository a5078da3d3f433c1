'use client'
import { useState } from 'react'
import { Button } from '../ui/button'
import { leaveTablet } from './leave-tablet'

/** In the place of "Sign out" on a tablet: back to the rack; what is typed waits for its person. */
export function SwitchPerson() {
  const [stage, setStage] = useState<'idle' | 'pending' | 'failed'>('idle')
  async function leave() {
    setStage('pending')
    if (!(await leaveTablet('switched person'))) setStage('failed')
  }
  return (
    <>
      <Button variant="quiet" pending={stage === 'pending'} onClick={() => void leave()}>
        Switch person
      </Button>
      {stage === 'failed' && <span role="alert">No connection. Try again.</span>}
    </>
  )
}
