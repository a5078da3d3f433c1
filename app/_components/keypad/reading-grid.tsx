'use client'
import { useEffect, useRef, useState } from 'react'
import { nextPlace, useDock } from './dock'
import { quantities, type Quantity } from '@/lib/core/units/quantities'
import { FigureCell, type CellWords } from './figure-cell'
import { fromCell, press, toCell, turnUnit, type Key } from './figure-text'
import { keepUnit, keptUnit } from './kept-unit'
import { Keys } from './keys'
import styles from './keypad.module.css'
import { markFor, type Limits, type Mark } from './validation-hint'
import { NotTakenCell } from './not-taken-cell'

export type ReadingCell = Omit<CellWords, 'expected'> & {
  point: string
  limits?: Limits | undefined
  /** What is expected, in the unit that the cell shows. */
  expected?: ((unit: string) => string) | undefined
  /** Possible, and to be looked at; '' for nothing. */
  caution?: string
  /** Why it may not be saved; '' for nothing. */
  stop?: string | undefined
  /** What was likely meant: one tap puts it into the cell. */
  slip?: string | null
}

/** `text` as typed; `notTaken`: why it could not be had, '' while the reason is being written, null when it was taken. */
export type ReadingEntry = { point: string; text: string; notTaken: string | null }

type Props = {
  label: string
  quantity: Quantity
  /** The unit to begin with; left out: the quantity's own. */
  unit?: string
  /** Names by which the unit that was chosen last is kept on this device, "|" between them: the first that has one counts. */
  keepUnitAs?: string
  /** Units to turn through with the unit key; left out: those of the quantity. */
  units?: readonly string[]
  cells: readonly ReadingCell[]
  values: readonly ReadingEntry[]
  onChange: (values: ReadingEntry[]) => void
  /** A cell was left: what is typed there is meant. */
  onSettle?: (point: string) => void
  /** Each cell may say "not taken: why" instead. */
  mayBeNotTaken?: boolean
  /** What the server said, by point. */
  errors?: Readonly<Record<string, string>>
  /** After "next" in the last cell: move focus to what comes after. */
  onDone?: () => void
  doneLabel?: string
}

/** What is said about a figure moves what stands below: not under the finger that is just tapping there. */
const tapMs = 400

/** Figures of one kind at several points, in a row, fed by one keypad or a real keyboard. */
export function ReadingGrid(props: Props) {
  const { label, quantity, cells, values, mayBeNotTaken = false, errors } = props
  const own = quantities[quantity].unit
  const { unit = own } = props
  const { units = quantities[quantity].keypadUnits } = props
  const [shown, setShown] = useState(unit)
  const [at, setAt] = useState<string | null>(null)
  const inputs = useRef(new Map<string, HTMLInputElement>())
  /** The cell that takes focus once it is drawn. */
  const wanted = useRef<string | null>(null)
  const current = cells.find(({ point }) => point === at) ?? cells[0]
  const { keepUnitAs } = props
  const dock = useDock()

  useEffect(() => {
    const kept = keepUnitAs === undefined ? null : keptUnit(keepUnitAs)
    if (kept !== null && units.includes(kept)) setShown(kept)
  }, [keepUnitAs, units])

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
    if (keepUnitAs !== undefined) keepUnit(keepUnitAs, next)
  }

  const after = cells.slice(cells.findIndex(({ point }) => point === current?.point) + 1)
  const nextCell = after.find(({ point }) => entryOf(point).notTaken === null)

  // The keypad of the screen shows the cell as it is now.
  const isActive = dock?.active === inputs
  useEffect(() => {
    if (!dock || !current) return
    if (!isActive) return dock.activateFirst(inputs)
    const { point, label: name } = current
    dock.take({
      label: name,
      text: toCell(entryOf(point).text, shown, own),
      unit: shown,
      units,
      onKey: key,
      onUnit: turn,
      onLeave: () => props.onSettle?.(point),
      input: () => inputs.current.get(point),
    })
  })
  const leave = dock?.leave
  useEffect(() => () => leave?.(inputs), [leave])

  function goNext() {
    if (current) props.onSettle?.(current.point)
    if (dock) {
      const from = current && inputs.current.get(current.point)
      return void setTimeout(() => nextPlace(dock.pane.current, from)?.focus())
    }
    if (!nextCell) return props.onDone?.()
    setAt(nextCell.point)
    inputs.current.get(nextCell.point)?.focus()
  }

  return (
    <div role="group" aria-label={label} data-hands-on className={dock ? undefined : styles.pad}>
      <div className={styles.cells}>
        {cells.map((cell) => {
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
                expected={cell.expected?.(shown)}
                cell={toCell(entry.text, shown, own)}
                unit={shown}
                mark={markOf(cell, entry.text, quantity, errors?.[cell.point])}
                current={cell === current && (!dock || isActive)}
                onCell={(text) => change(cell.point, { text: fromCell(text, shown, own) })}
                onFocus={() => {
                  setAt(cell.point)
                  dock?.activate(inputs)
                }}
                onLeave={() => setTimeout(() => props.onSettle?.(cell.point), tapMs)}
                onNext={goNext}
              />
              {cell.slip && (
                <button
                  type="button"
                  className={styles.switch}
                  aria-label={`Use ${cell.slip} instead: ${cell.label}`}
                  onClick={() => change(cell.point, { text: cell.slip ?? '' })}
                >
                  {cell.slip}?
                </button>
              )}
              {mayBeNotTaken && !cell.point.startsWith('again ') && (
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
      {!dock && (
        <Keys
          label={`Keypad for ${current?.label ?? label}`}
          onKey={key}
          unit={shown}
          units={units}
          onUnit={turn}
          onNext={goNext}
          nextLabel={nextCell ? 'Next' : (props.doneLabel ?? 'Done')}
        />
      )}
    </div>
  )
}

/** What the server said comes first, then what cannot be, then what is to be looked at. */
function markOf(cell: ReadingCell, text: string, quantity: Quantity, error?: string): Mark {
  const stop = error || cell.stop
  if (stop) return { kind: 'refused', words: stop }
  const mark = markFor(text, quantity, cell.limits)
  if (mark.kind === 'refused' || !cell.caution) return mark
  return { kind: 'out', words: cell.caution }
}
