'use client'
import { useRef, useState } from 'react'
import { quantities, type Quantity } from '@/lib/core/units/quantities'
import { FigureCell, type CellWords } from './figure-cell'
import { fromCell, press, toCell, turnUnit, type Key } from './figure-text'
import { Keys } from './keys'
import styles from './keypad.module.css'
import { markFor, type Limits } from './validation-hint'
import { NotTakenCell } from './not-taken-cell'

export type ReadingCell = CellWords & { point: string; limits?: Limits }

/** `text` as typed; `notTaken`: why it could not be had, '' while the reason is being written, null when it was taken. */
export type ReadingEntry = { point: string; text: string; notTaken: string | null }

type Props = {
  label: string
  quantity: Quantity
  /** The unit to begin with; left out: the quantity's own. */
  unit?: string
  /** Units to turn through with the unit key; left out: those of the quantity. */
  units?: readonly string[]
  cells: readonly ReadingCell[]
  values: readonly ReadingEntry[]
  onChange: (values: ReadingEntry[]) => void
  /** Each cell may say "not taken: why" instead. */
  mayBeNotTaken?: boolean
  /** What the server said, by point. */
  errors?: Readonly<Record<string, string>>
  /** After "next" in the last cell: move focus to what comes after. */
  onDone?: () => void
  doneLabel?: string
}

/** Figures of one kind at several points, in a row, fed by one keypad or a real keyboard. */
export function ReadingGrid(props: Props) {
  const { label, quantity, cells, values, mayBeNotTaken = false, errors } = props
  const own = quantities[quantity].unit
  const { unit = own } = props
  const { units = quantities[quantity].keypadUnits } = props
  const [shown, setShown] = useState(unit)
  const [at, setAt] = useState(0)
  const inputs = useRef(new Map<string, HTMLInputElement>())
  /** The cell that takes focus once it is drawn. */
  const wanted = useRef<string | null>(null)
  const current = cells[at] ?? cells[0]

  const entryOf = (point: string): ReadingEntry =>
    values.find((value) => value.point === point) ?? { point, text: '', notTaken: null }

  function change(point: string, part: Partial<ReadingEntry>) {
    props.onChange(cells.map((cell) => ({ ...entryOf(cell.point), ...(cell.point === point ? part : {}) })))
  }

  function key(pressed: Key) {
    if (!current) return
    const entry = entryOf(current.point)
    if (entry.notTaken !== null) return
    change(current.point, { text: fromCell(press(toCell(entry.text, shown, own), pressed), shown, own) })
  }

  function turn(next: string) {
    if (current) change(current.point, { text: turnUnit(entryOf(current.point).text, shown, next, own) })
    setShown(next)
  }

  function goNext() {
    const next = cells.findIndex((cell, place) => place > at && entryOf(cell.point).notTaken === null)
    const cell = cells[next]
    if (!cell) return props.onDone?.()
    setAt(next)
    inputs.current.get(cell.point)?.focus()
  }

  const isLast = !cells.some((cell, place) => place > at && entryOf(cell.point).notTaken === null)

  return (
    <div role="group" aria-label={label} data-hands-on className={styles.pad}>
      <div className={styles.cells}>
        {cells.map((cell, place) => {
          const entry = entryOf(cell.point)
          if (entry.notTaken !== null) {
            return (
              <NotTakenCell
                key={cell.point}
                label={cell.label}
                why={entry.notTaken}
                error={errors?.[cell.point]}
                onWhy={(why) => change(cell.point, { notTaken: why })}
                onTake={() => {
                  wanted.current = cell.point
                  change(cell.point, { notTaken: null })
                }}
              />
            )
          }
          return (
            <div key={cell.point} className={styles.cellAndSwitch}>
              <FigureCell
                ref={(node) => {
                  if (!node) return void inputs.current.delete(cell.point)
                  inputs.current.set(cell.point, node)
                  if (wanted.current !== cell.point) return
                  wanted.current = null
                  node.focus()
                }}
                label={cell.label}
                previous={cell.previous}
                target={cell.target}
                cell={toCell(entry.text, shown, own)}
                unit={shown}
                mark={markFor(entry.text, quantity, cell.limits, errors?.[cell.point])}
                current={place === at}
                onCell={(text) => change(cell.point, { text: fromCell(text, shown, own) })}
                onFocus={() => setAt(place)}
                onNext={goNext}
              />
              {mayBeNotTaken && (
                <button
                  type="button"
                  className={styles.switch}
                  aria-label={`Not taken: ${cell.label}`}
                  onClick={() => change(cell.point, { text: '', notTaken: '' })}
                >
                  Not taken
                </button>
              )}
            </div>
          )
        })}
      </div>
      <Keys
        label={`Keypad for ${current?.label ?? label}`}
        onKey={key}
        unit={shown}
        units={units}
        onUnit={turn}
        onNext={goNext}
        nextLabel={isLast ? (props.doneLabel ?? 'Done') : 'Next'}
      />
    </div>
  )
}
