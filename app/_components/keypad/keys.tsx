'use client'
import type { PointerEvent } from 'react'
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

/** Large keys for gloves. Digits are not held back for 400 ms like other buttons: "11" is typed faster than that. */
export function Keys({ label, onKey, unit, units, onUnit, onNext, nextLabel }: Props) {
  const nextUnit = units[(units.indexOf(unit) + 1) % units.length] ?? unit
  return (
    <div role="group" aria-label={label} className={styles.keys} onPointerDown={keepFocus}>
      {rows.flat().map((key) => (
        <button key={key} type="button" aria-label={names[key]} className={styles.key} onClick={() => onKey(key)}>
          {key === 'back' ? <BackSign /> : key}
        </button>
      ))}
      <button
        type="button"
        className={styles.key}
        disabled={nextUnit === unit}
        aria-label={nextUnit === unit ? `unit: ${unit}` : `unit: ${unit}; change to ${nextUnit}`}
        onClick={() => onUnit(nextUnit)}
      >
        <span className={styles.unitKey}>
          {units.map((one) => (
            <span key={one} className={one === unit ? styles.unitOn : undefined}>
              {one}
            </span>
          ))}
        </span>
      </button>
      <button type="button" className={`${styles.key} ${styles.next}`} onClick={onNext}>
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
