'use client'
import type { PointerEvent } from 'react'
import { BackSign } from './back-sign'
import { unitWords } from '@/lib/words/units'
import type { Key } from './figure-text'
import styles from './keypad.module.css'
import { useKeyGrid } from './use-key-grid'

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

/**
 * Large keys for gloves. Digits are not held back for 400 ms like other buttons: "11" is typed faster than that. One tab
 * stop; arrows move within.
 */
export function Keys({ label, onKey, unit, units, onUnit, onNext, nextLabel }: Props) {
  const nextUnit = units[(units.indexOf(unit) + 1) % units.length] ?? unit
  const { onKeyDown, keyAt } = useKeyGrid(4)

  return (
    <div role="group" aria-label={label} className={styles.keys} onPointerDown={keepFocus} onKeyDown={onKeyDown}>
      {rows.flat().map((key, place) => (
        <button
          key={key}
          type="button"
          aria-label={names[key]}
          className={styles.key}
          onClick={() => onKey(key)}
          {...keyAt(place)}
        >
          {key === 'back' ? <BackSign className={styles.backSign} /> : key}
        </button>
      ))}
      <button
        type="button"
        className={styles.key}
        aria-disabled={nextUnit === unit || undefined}
        aria-label={
          nextUnit === unit ? `unit: ${unitWords(unit)}` : `unit: ${unitWords(unit)}; change to ${unitWords(nextUnit)}`
        }
        onClick={() => nextUnit !== unit && onUnit(nextUnit)}
        {...keyAt(14)}
      >
        <span className={styles.unitKey}>
          {units.map((one) => (
            <span key={one} className={one === unit ? styles.unitOn : undefined}>
              {one}
            </span>
          ))}
        </span>
      </button>
      <button type="button" className={`${styles.key} ${styles.next}`} onClick={onNext} {...keyAt(15)}>
        {nextLabel}
      </button>
    </div>
  )
}
