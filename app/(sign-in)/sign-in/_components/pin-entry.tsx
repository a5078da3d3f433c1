'use client'
import { useEffect, useId, useRef, useState, type KeyboardEvent } from 'react'
import { Busy } from '@/app/_components/ui/busy'
import { Button } from '@/app/_components/ui/button'
import { Sign } from '@/app/_components/ui/sign'
import { pinDigits } from '@/lib/core/access/pin'
import type { RackCard } from '@/lib/use-cases/tablets/see-rack'
import { PinKeys, type PinKey } from './pin-keys'
import styles from './rack.module.css'
import { tryPin, type PinProblem } from './try-pin'
import { useWait } from './use-wait'

type Props = { card: RackCard; goTo: string; onBack: () => void }

const digitsOf = (text: string): string => text.replaceAll(/\D/g, '').slice(0, pinDigits)

/** Six digits on the docked keypad or a real keyboard; the sixth signs in. */
export function PinEntry({ card, goTo, onBack }: Props) {
  const [pin, setPin] = useState('')
  const [pending, setPending] = useState(false)
  const [problem, setProblem] = useState<PinProblem | null>(null)
  const { waitS, startWait } = useWait(card.waitMs)
  const input = useRef<HTMLInputElement>(null)
  const id = useId()
  const resting = pending || waitS > 0

  useEffect(() => {
    if (!resting) input.current?.focus()
  }, [resting])

  async function send(typed: string) {
    setPending(true)
    setProblem(null)
    const found = await tryPin(card.personId, typed)
    // A whole new page: everything on it is asked for by the person who is now signed in.
    if (found === null) return window.location.assign(goTo)
    setPin('')
    setPending(false)
    setProblem(found)
    startWait(found.waitMs)
  }

  function type(text: string) {
    if (resting) return
    const typed = digitsOf(text)
    setPin(typed)
    if (typed.length === pinDigits) void send(typed)
  }

  function press(key: PinKey) {
    if (key === 'clear') type('')
    else type(key === 'back' ? pin.slice(0, -1) : pin + key)
  }

  /** Digits of a real keyboard count wherever focus is, on a key of the keypad too. */
  function keyDown(event: KeyboardEvent) {
    if (event.key === 'Escape') return onBack()
    if (event.target === input.current || event.ctrlKey || event.altKey || event.metaKey) return
    if (/^\d$/.test(event.key)) press(event.key as PinKey)
    if (event.key === 'Backspace') press('back')
  }

  return (
    <div className={styles.entry} onKeyDown={keyDown}>
      <div className={styles.who}>
        <div className={styles.taken}>
          <Button onClick={onBack}>Back to the rack</Button>
          <h1>{card.name}</h1>
        </div>
        <label htmlFor={id}>PIN, six digits</label>
        <input
          ref={input}
          id={id}
          className={styles.pin}
          // Dots, and no offer of the browser to keep it: the tablet has many people.
          type="password"
          autoComplete="one-time-code"
          inputMode="none"
          maxLength={pinDigits}
          value={pin}
          readOnly={resting}
          aria-describedby={`${id}-hint`}
          onChange={(event) => type(event.target.value)}
        />
        <p id={`${id}-hint`} className="soft">
          The sixth digit signs you in.
        </p>
        {problem && (
          <p role="alert" className={styles.problem}>
            <Sign kind="stop" /> {problem.message}
          </p>
        )}
        {waitS > 0 && <p className={styles.wait}>Wait {waitS} s before the next try.</p>}
        <Busy when={pending} label="Signing in…" />
      </div>
      <PinKeys onKey={press} disabled={resting} />
    </div>
  )
}
