'use client'
import type { Ref } from 'react'
import styles from './valve-sheet.module.css'

type Props = {
  ref?: Ref<HTMLSelectElement>
  label: string
  text: string
  /** What stands there already. */
  kept: string
  filled: boolean
  current: boolean
  disabled: boolean
  /** The shop's list. */
  seatAngles: readonly string[]
  onFocus: () => void
  onPick: (angles: string) => void
}

/** Seat angles are picked from what the shop cuts; others are typed beside the grid. */
export function AnglePick({ ref, label, text, kept, filled, current, disabled, seatAngles, onFocus, onPick }: Props) {
  const value = text === '' ? kept : text
  const options = [...new Set([...seatAngles, value])].filter((one) => one !== '')
  return (
    <div className={styles.cell} data-current={current || undefined} data-filled={filled || undefined}>
      <select
        ref={ref}
        aria-label={label}
        className={styles.pick}
        value={value}
        disabled={disabled}
        onFocus={onFocus}
        onChange={(event) => onPick(event.target.value)}
      >
        <option value="" />
        {options.map((angles) => (
          <option key={angles} value={angles}>
            {angles}
          </option>
        ))}
      </select>
      <span className={styles.state}>{filled ? 'filled' : ''}</span>
    </div>
  )
}
