'use client'
import { useEffect, useRef, useState } from 'react'
import { fromCell, press, toCell, turnUnit, type Key } from '@/app/_components/keypad/figure-text'
import { nextPlace, useDock } from '@/app/_components/keypad/dock'
import { keepUnit, keptUnit } from '@/app/_components/keypad/kept-unit'
import type { Port } from '@/lib/core/readings/valves'
import type { ValveKind } from '@/lib/core/readings/valve-kinds'
import { quantities } from '@/lib/core/units/quantities'
import type { StepField } from '@/lib/use-cases/stations/see-step'
import { answerKey, type Answer, type Answers } from '../answers'
import { fillAll, filledBy, nextEmpty, textOfAll, type Column, type Place, type Row } from './grid'

/** What is said about a figure moves what stands below: not under the finger that is just tapping there. */
const tapMs = 400
/** The docked keypad moves the focus at once; ours comes after it. */
const afterDockMs = 30

export type Target = Place & { readonly again: boolean }

type Options = {
  columns: readonly Column[]
  rows: readonly Row[]
  answers: Answers
  onChange: (answers: Answers) => void
  onSettle: (key: string) => void
  /** Whether a figure there has to be typed again before it is left. */
  asksAgain: (key: string) => boolean
  /** Under which name the unit of a kind is kept on this device. */
  unitName: (kind: ValveKind) => string
}

/** Which cell the keypad writes into, in which unit, and what a key, a fill and "next" do to the answers. */
export function useSheet({ columns, rows, answers, onChange, onSettle, asksAgain, unitName }: Options) {
  const [at, setAt] = useState<Target | null>(null)
  const [units, setUnits] = useState<Readonly<Record<string, string>>>({})
  const inputs = useRef(new Map<string, HTMLElement>())
  const dock = useDock()
  /** The cell that takes focus once it is drawn. */
  const wanted = useRef<string | null>(null)
  const names = columns.map(({ kind }) => `${kind}=${unitName(kind)}`).join('\n')

  useEffect(() => {
    const kept = names.split('\n').map((line) => line.split('='))
    setUnits(Object.fromEntries(kept.map(([kind = '', name = '']) => [kind, keptUnit(name) ?? ''])))
  }, [names])

  const firstColumn = columns[0] as Column
  const target: Target = at ?? { kind: firstColumn.kind, point: rows[0]?.point ?? '', again: false }
  const column = columns.find(({ kind }) => kind === target.kind) ?? firstColumn
  const row = rows.find(({ point }) => point === target.point) ?? (rows[0] as Row)

  const ownOf = ({ quantity }: Column): string => (quantity ? quantities[quantity].unit : '')
  function unitOf(of: Column): string {
    const kept = units[of.kind] ?? ''
    return of.quantity && quantities[of.quantity].keypadUnits.includes(kept) ? kept : ownOf(of)
  }

  /** The answers that a cell stands for: one, or all of a kind that nobody measured. */
  const fieldsAt = (of: Column, { all, port, point }: Row): readonly StepField[] =>
    all ? filledBy(of, port, answers) : of.fields.filter((field) => field.point === point)
  const keysAt = (of: Column, one: Row): string[] =>
    fieldsAt(of, one).map((field) => answerKey(field.kind, field.point))
  const answerAt = (of: Column, one: Row): Answer | undefined => answers[keysAt(of, one)[0] ?? '']
  const textAt = (of: Column, one: Row): string =>
    one.all ? textOfAll(of, one.port, answers) : (answerAt(of, one)?.text ?? '')

  function write(of: Column, one: Row, text: string) {
    if (one.all) return onChange(fillAll(of, one.port as Port, text, answers))
    onChange({ ...answers, [answerKey(of.kind, one.point)]: { text, notTaken: null } })
  }

  function writeAgain(of: Column, one: Row, again: string) {
    const keys = keysAt(of, one)
    onChange({
      ...answers,
      ...Object.fromEntries(keys.map((key) => [key, { text: '', notTaken: null, ...answers[key], again }])),
    })
  }

  const shown = unitOf(column)
  const own = ownOf(column)
  const againText = answerAt(column, row)?.again ?? ''

  function key(pressed: Key) {
    if (!column.quantity) return
    const before = target.again ? againText : textAt(column, row)
    const text = fromCell(press(toCell(before, shown, own), pressed), shown, own)
    if (target.again) writeAgain(column, row, text)
    else write(column, row, text)
  }

  function turn(next: string) {
    if (!target.again) write(column, row, turnUnit(textAt(column, row), shown, next, own))
    setUnits({ ...units, [column.kind]: next })
    keepUnit(unitName(column.kind), next)
  }

  function focus(place: Target) {
    setAt(place)
    const name = place.again ? 'again' : `${place.kind}|${place.point}`
    const input = inputs.current.get(name)
    if (input) input.focus()
    else wanted.current = name
  }

  const settle = () => keysAt(column, row).forEach(onSettle)

  /** To the second cell of an unlikely figure, else to the next empty one; false: none is left in the sheet. */
  function goOn(): boolean {
    settle()
    const unsure = keysAt(column, row).some(asksAgain)
    if (unsure && !target.again) focus({ ...target, again: true })
    else {
      const next = nextEmpty(columns, answers, target)
      if (!next) return false
      focus({ ...next, again: false })
    }
    return true
  }

  const inputNow = (): HTMLInputElement | undefined => {
    const input = inputs.current.get(target.again ? 'again' : `${column.kind}|${row.point}`)
    return input instanceof HTMLInputElement ? input : undefined
  }

  function goNext() {
    if (!goOn()) nextPlace(dock?.pane.current ?? null, inputNow())?.focus()
  }

  // The keypad of the screen shows the cell as it is now.
  const isActive = dock?.active === inputs
  useEffect(() => {
    if (!dock) return
    if (!isActive) return dock.activateFirst(inputs)
    dock.take({
      label: `${row.name}, ${column.short}`,
      text: toCell(target.again ? againText : textAt(column, row), shown, own),
      unit: shown,
      units: column.quantity ? quantities[column.quantity].keypadUnits : [''],
      onKey: key,
      onUnit: turn,
      // The dock goes on by the order of the page; down the column is the order of the work.
      onLeave: () => void setTimeout(goOn, afterDockMs),
      input: inputNow,
    })
  })
  const leaveDock = dock?.leave
  useEffect(() => () => leaveDock?.(inputs), [leaveDock])

  function move(by: number) {
    const to = rows[rows.indexOf(row) + by]
    if (to) focus({ kind: column.kind, point: to.point, again: false })
  }

  return {
    target,
    column,
    row,
    shown,
    own,
    againText,
    unitOf,
    ownOf,
    textAt,
    keysAt,
    fieldsAt,
    write,
    writeAgain,
    key,
    turn,
    goNext,
    move,
    isActive,
    focusAt: (place: Target) => {
      setAt(place)
      dock?.activate(inputs)
    },
    leave: (of: Column, one: Row) => setTimeout(() => keysAt(of, one).forEach(onSettle), tapMs),
    hold: (name: string) => (node: HTMLElement | null) => {
      if (!node) return void inputs.current.delete(name)
      inputs.current.set(name, node)
      if (wanted.current !== name) return
      wanted.current = null
      node.focus()
    },
  }
}

export type Sheet = ReturnType<typeof useSheet>
