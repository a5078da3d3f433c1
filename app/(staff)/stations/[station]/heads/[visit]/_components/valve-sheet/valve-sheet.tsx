'use client'
import { toCell, fromCell } from '@/app/_components/keypad/figure-text'
import type { Mark } from '@/app/_components/keypad/validation-hint'
import { TextInput } from '@/app/_components/ui/text-input'
import type { ExpectedFacts } from '@/lib/core/expected/types'
import type { StepField } from '@/lib/use-cases/stations/see-step'
import type { ValveKind } from '@/lib/core/readings/valve-kinds'
import { filledWords } from '@/lib/words/valve-sheet'
import { answerKey, type Answers } from '../answers'
import type { CellAsks } from '../cell-asks'
import { ReadWith, unitNames, type ReadWithProps } from '../read-with'
import { AboutCell } from './about-cell'
import { AnglePick } from './angle-pick'
import { limitsOf, markOf } from './cell'
import { columnsOf, filledCount, rowsOf, standing, type Column, type Row } from './grid'
import { Springs } from './springs'
import { useSheet, type Sheet } from './use-sheet'
import { ValveCell } from './valve-cell'
import styles from './valve-sheet.module.css'

type Props = {
  /** All fields of the step that are read at each valve. */
  fields: readonly StepField[]
  answers: Answers
  errors: Readonly<Record<string, string>>
  asks: CellAsks
  settled: ReadonlySet<string>
  facts: ExpectedFacts | null
  seatAngles: readonly string[]
  onSettle: (key: string) => void
  onChange: (answers: Answers) => void
  readWith: ReadWithProps
}

type Shared = Props & { sheet: Sheet }

/** Steps whose figures say how far a valve may open. */
const springKinds = ['installed-height', 'seat-pressure']

/** The columns of one step of the valve sheet: a row a valve, one keypad for all of them. */
export function ValveSheet(props: Props) {
  const { fields, answers, asks, facts, readWith, onChange, onSettle } = props
  const columns = columnsOf(fields)
  const rows = rowsOf(columns)
  const asksAgain = (key: string) => asks[key] !== undefined && asks[key].unlikely !== '' && !asks[key].confirmed
  const unitName = (kind: ValveKind) => unitNames(readWith, kind)
  const sheet = useSheet({ columns, rows, answers, onChange, onSettle, asksAgain, unitName })
  const shared: Shared = { ...props, sheet }
  const reckons = facts !== null && columns.some(({ kind }) => springKinds.includes(kind))
  return (
    <section className="stack" aria-label="Valve sheet" data-hands-on>
      <p className="soft">
        A row for each valve. A figure typed at “All … alike” fills the valves that nobody measured, and is kept as
        filled, not measured.
      </p>
      <Side {...shared} />
      <div>
        <div className={styles.scroll} tabIndex={0} role="region" aria-label="Valves, scrolls sideways">
          <table className={styles.sheet}>
            <thead>
              <tr>
                <th scope="col">Valve</th>
                {columns.map((column) => (
                  <ColumnHead key={column.kind} column={column} unit={sheet.unitOf(column)} answers={answers} />
                ))}
              </tr>
            </thead>
            <tbody>
              {rows.map((row, at) => (
                <tr
                  key={row.point}
                  data-all={row.all || undefined}
                  data-last-all={(row.all && rows[at + 1]?.all === false) || undefined}
                >
                  <th scope="row">{row.name}</th>
                  {columns.map((column) => (
                    <td key={column.kind}>
                      <Cell {...shared} column={column} row={row} />
                    </td>
                  ))}
                </tr>
              ))}
            </tbody>
          </table>
        </div>
      </div>
      <details>
        <summary>Read with</summary>
        <div className={styles.readWith}>
          {columns.map(({ kind, short }) => (
            <ReadWith key={kind} kind={kind} label={short} inList {...readWith} />
          ))}
        </div>
      </details>
      {reckons && facts && <Springs rows={rows} answers={answers} facts={facts} />}
    </section>
  )
}

function ColumnHead({ column, unit, answers }: { column: Column; unit: string; answers: Answers }) {
  const filled = filledCount(column, answers)
  return (
    <th scope="col">
      {column.short}
      <span className={styles.unit}>{unit}</span>
      {filled > 0 && (
        <span className={styles.filledHead}>
          {filled} {filledWords}
        </span>
      )}
    </th>
  )
}

const noMark: Mark = { kind: 'none', words: '' }

/** What is said of one cell; of all of a kind what is said of the first. */
function markAt({ sheet, asks, errors, settled, answers, facts }: Shared, column: Column, row: Row): Mark {
  const [field] = sheet.fieldsAt(column, row)
  if (!field) return noMark
  const key = answerKey(field.kind, field.point)
  const asked = settled.has(key) || answers[key]?.again !== undefined
  return markOf(field, sheet.textAt(column, row), facts, { error: errors[key], ask: asks[key], asked })
}

const cellLabel = (row: Row, column: Column): string => `${row.name}, ${column.label}`

function Cell({ column, row, ...shared }: Shared & { column: Column; row: Row }) {
  const { sheet, answers, seatAngles } = shared
  const [field] = sheet.fieldsAt(column, row)
  const name = `${column.kind}|${row.point}`
  const answer = field && answers[answerKey(field.kind, field.point)]
  const filled = field !== undefined && !row.all && standing(field, answer) === 'filled'
  const isTarget = sheet.target.kind === column.kind && sheet.target.point === row.point && !sheet.target.again
  const current = isTarget && sheet.isActive
  const text = sheet.textAt(column, row)
  const label = cellLabel(row, column)
  const onFocus = () => sheet.focusAt({ kind: column.kind, point: row.point, again: false })
  const kept = row.all ? '' : (field?.answer ?? '')
  if (!column.quantity) {
    return (
      <AnglePick
        ref={sheet.hold(name)}
        {...{ label, text, kept, filled, current, onFocus, seatAngles }}
        disabled={!field}
        onPick={(picked) => sheet.write(column, row, picked)}
      />
    )
  }
  const [shown, own] = [sheet.unitOf(column), sheet.ownOf(column)]
  return (
    <ValveCell
      ref={sheet.hold(name)}
      {...{ label, filled, current, onFocus }}
      cell={toCell(text, shown, own)}
      placeholder={toCell(kept, shown, own)}
      mark={markAt(shared, column, row)}
      disabled={!field}
      onCell={(typed) => sheet.write(column, row, fromCell(typed, shown, own))}
      onLeave={() => sheet.leave(column, row)}
      onNext={sheet.goNext}
      onMove={sheet.move}
    />
  )
}

/** What is to be known of the cell that the keypad writes into. */
function Side(shared: Shared) {
  const { sheet, answers, asks, errors, settled, facts } = shared
  const { column, row, shown, own } = sheet
  const [field] = sheet.fieldsAt(column, row)
  const key = field ? answerKey(field.kind, field.point) : ''
  const answer = answers[key]
  const ask = asks[key]
  const unlikely = ask !== undefined && ask.unlikely !== '' && (settled.has(key) || answer?.again !== undefined)
  const refused = /Type it again/.test(errors[key] ?? '')
  const filled = field !== undefined && !row.all && standing(field, answer) === 'filled'
  const same = answer?.text || field?.answer || ''
  const limits = field ? limitsOf(field, facts) : null
  return (
    <div className={styles.side}>
      <AboutCell
        name={cellLabel(row, column)}
        mark={field ? markAt(shared, column, row) : { kind: 'read', words: 'Every valve of this kind is measured.' }}
        beside={[
          ['wanted', limits?.words ?? ''],
          ['expected', ask?.expected(shown) ?? ''],
          ['last reading', row.all ? '' : (field?.answer ?? '')],
          ['before', row.all ? '' : (field?.previous ?? '')],
        ]}
        filled={filled}
        onMeasured={filled && same !== '' ? () => sheet.write(column, row, same) : null}
        slip={unlikely && !ask.confirmed ? ask.slip : null}
        onSlip={(slip) => sheet.write(column, row, slip)}
        again={
          unlikely || refused
            ? {
                cell: toCell(sheet.againText, shown, own),
                differs: sheet.againText !== '' && ask !== undefined && !ask.confirmed,
              }
            : null
        }
        againRef={sheet.hold('again')}
        onAgain={(typed) => sheet.writeAgain(column, row, fromCell(typed, shown, own))}
        onAgainFocus={() => sheet.focusAt({ ...sheet.target, again: true })}
        onNext={sheet.goNext}
      />
      {column.quantity === null && (
        <TextInput
          label={`${cellLabel(row, column)}: other angles`}
          value={sheet.textAt(column, row)}
          onChange={(event) => sheet.write(column, row, event.target.value)}
        />
      )}
    </div>
  )
}
