'use client'
import { useState } from 'react'
import { Button } from '@/app/_components/ui/button'
import { Field, controlProps } from '@/app/_components/ui/field'
import { Notice } from '@/app/_components/ui/notice'
import { Select } from '@/app/_components/ui/select'
import { Table } from '@/app/_components/ui/table'
import { TextArea } from '@/app/_components/ui/text-area'
import { counted } from '@/lib/core/counted'
import { flowFromTable, type ImportedFlow } from '@/lib/core/flow/import/flow-from-table'
import {
  guessColumns,
  liftUnits,
  type ColumnGuess,
  type ColumnUse,
  type LiftUnit,
} from '@/lib/core/flow/import/guess-columns'
import { mostCharacters, readFlowTable, type FlowTable } from '@/lib/core/flow/import/read-table'
import { answerKey, type Answers } from './answers'
import styles from './flow.module.css'

export type TakenReading = {
  readonly point: string
  readonly text: string
  /** '' while its reason is still to be given. */
  readonly notTaken: string | null
}

type Props = {
  /** What is typed already: it is only replaced after asking. */
  answers: Answers
  onTake: (readings: readonly TakenReading[], replace: boolean) => void
  onClose: () => void
}

/** A table from the bench's own program or a spreadsheet, read on this device; nothing leaves it before "save". */
export function FlowImport({ answers, onTake, onClose }: Props) {
  const [text, setText] = useState('')
  const [fileError, setFileError] = useState('')
  const [choice, setChoice] = useState<ColumnGuess | null>(null)
  const table = text === '' ? null : readFlowTable(text)

  function read(next: string) {
    setText(next)
    setFileError('')
    const found = readFlowTable(next)
    setChoice(found.ok ? guessColumns(found.value.rows) : null)
  }

  async function open(file: File | undefined) {
    if (!file) return
    if (file.size > mostCharacters) return setFileError('This file is larger than 200 kB: a flow run is a few lines.')
    read(await file.text())
  }

  return (
    <section aria-label="Flow from a table" className={`stack ${styles.import}`}>
      <TextArea
        label="Paste the table here"
        hint="A line a lift, with columns parted by tabs, commas or semicolons."
        error={table && !table.ok ? table.refusal.message : undefined}
        value={text}
        rows={5}
        spellCheck={false}
        onChange={(event) => read(event.target.value)}
      />
      <Field id="flow-file" label="Or choose a file" hint="CSV or text, up to 200 kB." error={fileError}>
        <input
          type="file"
          accept=".csv,.txt,text/csv,text/plain"
          className={styles.file}
          {...controlProps('flow-file', { hint: 'CSV or text, up to 200 kB.', error: fileError })}
          onChange={(event) => void open(event.target.files?.[0])}
        />
      </Field>
      {table?.ok && choice && (
        <Match table={table.value} choice={choice} onChoice={setChoice} answers={answers} onTake={onTake} />
      )}
      <div>
        <Button variant="quiet" onClick={onClose}>
          Close without taking
        </Button>
      </div>
    </section>
  )
}

type MatchProps = Pick<Props, 'answers' | 'onTake'> & {
  table: FlowTable
  choice: ColumnGuess
  onChoice: (choice: ColumnGuess) => void
}

const uses = [
  { value: '', label: 'Leave out' },
  { value: 'lift', label: 'Valve lift' },
  { value: 'intake', label: 'Intake, cfm' },
  { value: 'exhaust', label: 'Exhaust, cfm' },
]
const unitNames: Readonly<Record<LiftUnit, string>> = { in: 'inches', thou: 'thou', mm: 'millimetres' }
const shownRows = 6

function Match({ table, choice, onChoice, answers, onTake }: MatchProps) {
  const columns = choice.columns.map((use, place) => ({ use, place, id: String(place) }))
  const head = choice.heading > 0 ? table.rows[choice.heading - 1] : undefined
  const nameOf = (place: number): string => head?.cells[place] || `Column ${place + 1}`
  const read = flowFromTable(table.rows, choice)

  const setUse = (place: number, value: string) => {
    const use = uses.find((one) => one.value === value)?.value ?? ''
    onChoice({
      ...choice,
      columns: choice.columns.map((old, at) => (at === place ? ((use || null) as ColumnUse) : old)),
    })
  }

  return (
    <>
      <h3>Which column is what?</h3>
      <div className="columns">
        {columns.map(({ use, place, id }) => (
          <Select
            key={id}
            label={nameOf(place)}
            value={use ?? ''}
            options={uses}
            onChange={(event) => setUse(place, event.target.value)}
          />
        ))}
        <Select
          label="Lift is written in"
          value={choice.liftUnit}
          options={liftUnits.map((unit) => ({ value: unit, label: unitNames[unit] }))}
          onChange={(event) => onChoice({ ...choice, liftUnit: event.target.value as LiftUnit })}
        />
      </div>
      <Table
        label="The first lines of the table"
        columns={[
          { id: 'line', label: 'Line', head: true },
          ...columns.map(({ id, place }) => ({ id, label: nameOf(place), figure: true })),
        ]}
        rows={table.rows.slice(choice.heading, choice.heading + shownRows).map(({ line, cells }) => ({
          id: String(line),
          cells: { line, ...Object.fromEntries(columns.map(({ id, place }) => [id, cells[place]])) },
        }))}
      />
      {read.ok ? (
        <Report read={read.value} answers={answers} onTake={onTake} />
      ) : (
        <p role="status">{read.refusal.message}</p>
      )}
    </>
  )
}

function Report({ read, answers, onTake }: Pick<Props, 'answers' | 'onTake'> & { read: ImportedFlow }) {
  const [asking, setAsking] = useState(false)
  const figures = read.readings.filter(({ flowCfm }) => flowCfm !== null).length
  const waiting = read.readings.length - figures
  const overwrites = read.readings.some(({ point }) => {
    const answer = answers[answerKey('flow', point)]
    return answer !== undefined && (answer.text !== '' || (answer.notTaken ?? '') !== '')
  })
  const taken = read.readings.map(({ point, text, flowCfm }) => ({
    point,
    text,
    notTaken: flowCfm === null ? '' : null,
  }))
  return (
    <div className="stack">
      <p role="status">
        {counted(read.linesRead, 'line', 'lines')} read, {counted(figures, 'figure', 'figures')} found
        {waiting > 0 && `, ${counted(waiting, 'place', 'places')} with nothing in it: say there why it was not taken`}
        {read.leftOut.length > 0 && `, ${counted(read.leftOut.length, 'thing', 'things')} left out`}.
      </p>
      {read.leftOut.length > 0 && (
        <ul aria-label="Left out" className="plain-list">
          {read.leftOut.map(({ line, what, why }) => (
            <li key={`${line} ${what}`}>
              <strong>
                Line {line}
                {what === 'line' ? '' : `, ${what}`}:
              </strong>{' '}
              {why}
            </li>
          ))}
        </ul>
      )}
      {asking ? (
        <Notice kind="caution" title="Figures are typed already at some of these lifts">
          <div className="row">
            <Button onClick={() => onTake(taken, true)}>Replace what was typed</Button>
            <Button onClick={() => onTake(taken, false)}>Keep what was typed, take the rest</Button>
          </div>
        </Notice>
      ) : (
        <div>
          <Button
            variant="main"
            disabled={read.readings.length === 0}
            onClick={() => (overwrites ? setAsking(true) : onTake(taken, true))}
          >
            Take these
          </Button>
        </div>
      )}
    </div>
  )
}
