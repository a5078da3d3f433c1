'use client'
import { useRef, useState } from 'react'
import { quantities, type Quantity } from '@/lib/core/units/quantities'
import { FigureCell } from './figure-cell'
import { fromCell, press, toCell, turnUnit } from './figure-text'
import { Keys } from './keys'
import styles from './keypad.module.css'
import { markFor, type Limits } from './validation-hint'

type Props = {
  label: string
  /** As typed; a unit other than the quantity's own stands behind the figure: "18 thou". */
  value: string
  onChange: (text: string) => void
  quantity: Quantity
  /** The unit to begin with; left out: the quantity's own. */
  unit?: string
  /** Units to turn through with the unit key; left out: those of the quantity. */
  units?: readonly string[]
  previous?: string
  target?: string
  limits?: Limits
  /** What the server said about this figure. */
  error?: string
  onNext: () => void
  nextLabel?: string
}

/** One figure with its own keypad. */
export function FigureKeypad({
  label,
  value,
  onChange,
  quantity,
  unit = quantities[quantity].unit,
  units = quantities[quantity].keypadUnits,
  previous,
  target,
  limits,
  error,
  onNext,
  nextLabel = 'Next',
}: Props) {
  const own = quantities[quantity].unit
  const [shown, setShown] = useState(unit)
  const input = useRef<HTMLInputElement>(null)
  const cell = toCell(value, shown, own)

  function turn(next: string) {
    onChange(turnUnit(value, shown, next, own))
    setShown(next)
  }

  return (
    <div data-hands-on className={styles.pad}>
      <div className={styles.one}>
        <FigureCell
          ref={input}
          label={label}
          previous={previous}
          target={target}
          cell={cell}
          unit={shown}
          mark={markFor(value, quantity, limits, error)}
          current
          onCell={(text) => onChange(fromCell(text, shown, own))}
          onNext={onNext}
        />
      </div>
      <Keys
        label={`Keypad for ${label}`}
        onKey={(key) => onChange(fromCell(press(cell, key), shown, own))}
        unit={shown}
        units={units}
        onUnit={turn}
        onNext={onNext}
        nextLabel={nextLabel}
      />
    </div>
  )
}
