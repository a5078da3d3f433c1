'use client'
import type { PointerEvent } from 'react'
import { BackSign } from '@/app/_components/keypad/back-sign'
import { useKeyGrid } from '@/app/_components/keypad/use-key-grid'
import styles from './rack.module.css'

const keys = ['7', '8', '9', '4', '5', '6', '1', '2', '3', 'back', '0', 'clear'] as const
export type PinKey = (typeof keys)[number]

const first = keys.indexOf('5')

/** Tapping a key must not take the focus out of the field. */
const keepFocus = (event: PointerEvent) => event.preventDefault()

/** Large keys for gloves, one tab stop; arrows move in it. Not held back for 400 ms: "11" is typed faster than that. */
export function PinKeys({ onKey, disabled }: { onKey: (key: PinKey) => void; disabled: boolean }) {
  const { onKeyDown, keyAt } = useKeyGrid(3, first)

  return (
    <div role="group" aria-label="Keypad" className={styles.keys} onPointerDown={keepFocus} onKeyDown={onKeyDown}>
      {keys.map((key, place) => (
        <button
          key={key}
          type="button"
          aria-label={key === 'back' ? 'Delete the last digit' : undefined}
          aria-disabled={disabled || undefined}
          className={key === 'clear' ? `${styles.key} ${styles.word}` : styles.key}
          {...keyAt(place)}
          onClick={() => onKey(key)}
        >
          {key === 'back' ? <BackSign className={styles.backSign} /> : key === 'clear' ? 'Clear' : key}
        </button>
      ))}
    </div>
  )
}
