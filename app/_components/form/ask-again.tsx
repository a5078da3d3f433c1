'use client'
import { useId, useState, type KeyboardEvent } from 'react'
import { Button } from '../ui/button'
import { TextInput } from '../ui/text-input'
import { confirmPasswordAction } from './ask-again-action'
import { useAction } from './use-action'

/**
 * Asks for the password before a deed that needs it, in the place where the deed was refused; then the deed is sent once
 * more. No form of its own: it stands inside the form of the deed.
 */
export default function AskAgain({ onConfirmed }: { onConfirmed: () => void }) {
  const [password, setPassword] = useState('')
  const { run, pending, refusal, edited } = useAction()
  const id = useId()

  function confirm() {
    run({ action: confirmPasswordAction, input: { password }, name: 'confirm', onDone: onConfirmed })
  }

  /** Enter in the field would send the form around it. */
  function keyDown(event: KeyboardEvent) {
    if (event.key !== 'Enter') return
    event.preventDefault()
    confirm()
  }

  return (
    <div className="stack" onKeyDown={keyDown}>
      <TextInput
        id={id}
        label="Your password"
        type="password"
        autoComplete="current-password"
        autoFocus
        maxLength={200}
        value={password}
        error={refusal ? (refusal.fields?.password ?? refusal.message) : undefined}
        onChange={(event) => {
          setPassword(event.target.value)
          edited('password')
        }}
      />
      <div className="row">
        <Button onClick={confirm} pending={pending}>
          Confirm
        </Button>
      </div>
    </div>
  )
}
