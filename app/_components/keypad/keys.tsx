'use client'
import { useState, type KeyboardEvent, type PointerEvent } from 'react'
import type { Key } from './figure-text'
import styles from './keypad.module.css'

const rows: readonly (readonly Key[])[] = [
  ['7', '8', '9', 'back'],
  ['4', '5', '6', '−'],
  ['1', '2', '3', '/'],
  ['.', '0'],
]

const names: Partial<Record<Key, string>> = {
  back: 'Delete the last character',
  '−': 'minus',
  '/': 'over, for a fraction',
  '.': 'point',
}

type Props = {
  label: string
  onKey: (key: Key) => void
  unit: string
  /** More than one: the unit key turns from one to the next. */
  units: readonly string[]
  onUnit: (unit: string) => void
  onNext: () => void
  nextLabel: string
}

/** Tapping a key must not take the focus out of the cell. */
const keepFocus = (event: PointerEvent) => event.preventDefault()

const columns = 4
const turns: Readonly<Record<string, number>> = {
  ArrowLeft: -1,
  ArrowRight: 1,
  ArrowUp: -columns,
  ArrowDown: columns,
}

/**
 * Large keys for gloves. Digits are not held back for 400 ms like other buttons: "11" is typed faster than that. One tab
 * stop; arrows move within.
 */
export function Keys({ label, onKey, unit, units, onUnit, onNext, nextLabel }: Props) {
  const nextUnit = units[(units.indexOf(unit) + 1) % units.length] ?? unit
  const [stop, setStop] = useState(0)

  function move(event: KeyboardEvent<HTMLDivElement>) {
    const by = turns[event.key]
    const keys = [...event.currentTarget.querySelectorAll('button')]
    const at = keys.indexOf(document.activeElement as HTMLButtonElement)
    if (by === undefined || at < 0) return
    event.preventDefault()
    const to = Math.min(keys.length - 1, Math.max(0, at + by))
    setStop(to)
    keys[to]?.focus()
  }
  const tabStop = (place: number) => ({ tabIndex: place === stop ? 0 : -1, onFocus: () => setStop(place) })

  return (
    <div role="group" aria-label={label} className={styles.keys} onPointerDown={keepFocus} onKeyDown={move}>
      {rows.flat().map((key, place) => (
        <button
          key={key}
          type="button"
          aria-label={names[key]}
          className={styles.key}
          onClick={() => onKey(key)}
          {...tabStop(place)}
        >
          {key === 'back' ? <BackSign /> : key}
        </button>
      ))}
      <button
        type="button"
        className={styles.key}
        aria-disabled={nextUnit === unit || undefined}
        aria-label={nextUnit === unit ? `unit: ${unit}` : `unit: ${unit}; change to ${nextUnit}`}
        onClick={() => nextUnit !== unit && onUnit(nextUnit)}
        {...tabStop(14)}
      >
        <span className={styles.unitKey}>
          {units.map((one) => (
            <span key={one} className={one === unit ? styles.unitOn : undefined}>
              {one}
            </span>
          ))}
        </span>
      </button>
      <button type="button" className={`${styles.key} ${styles.next}`} onClick={onNext} {...tabStop(15)}>
        {nextLabel}
      </button>
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
