'use client'
import { useRef, useState, type KeyboardEvent, type PointerEvent } from 'react'
import styles from './rack.module.css'

const keys = ['7', '8', '9', '4', '5', '6', '1', '2', '3', 'back', '0', 'clear'] as const
export type PinKey = (typeof keys)[number]

const columns = 3
const steps: Readonly<Record<string, number>> = {
  ArrowLeft: -1,
  ArrowRight: 1,
  ArrowUp: -columns,
  ArrowDown: columns,
}
const first = keys.indexOf('5')

/** Tapping a key must not take the focus out of the field. */
const keepFocus = (event: PointerEvent) => event.preventDefault()

/** Large keys for gloves, one tab stop; arrows move in it. Not held back for 400 ms: "11" is typed faster than that. */
export function PinKeys({ onKey, disabled }: { onKey: (key: PinKey) => void; disabled: boolean }) {
  const [at, setAt] = useState(first)
  const buttons = useRef<(HTMLButtonElement | null)[]>([])

  function move(event: KeyboardEvent) {
    const to = at + (steps[event.key] ?? 0)
    if (!(event.key in steps) || to < 0 || to >= keys.length) return
    event.preventDefault()
    setAt(to)
    buttons.current[to]?.focus()
  }

  return (
    <div role="group" aria-label="Keypad" className={styles.keys} onPointerDown={keepFocus} onKeyDown={move}>
      {keys.map((key, place) => (
        <button
          key={key}
          ref={(node) => void (buttons.current[place] = node)}
          type="button"
          tabIndex={place === at ? 0 : -1}
          aria-label={key === 'back' ? 'Delete the last digit' : undefined}
          aria-disabled={disabled || undefined}
          className={key === 'clear' ? `${styles.key} ${styles.word}` : styles.key}
          onFocus={() => setAt(place)}
          onClick={() => onKey(key)}
        >
          {key === 'back' ? <BackSign /> : key === 'clear' ? 'Clear' : key}
        </button>
      ))}
    </div>
  )
}

/** Drawn, since not every tablet has a face with this sign. */
function BackSign() {
  return (
    <svg viewBox="0 0 32 24" aria-hidden="true" focusable="false" className={styles.backSign}>
      <path d="M10 3h20v18H10L2 12zM15 8l8 8M23 8l-8 8" />
    </svg>
  )
}
