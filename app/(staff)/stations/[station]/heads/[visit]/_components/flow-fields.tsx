'use client'
import dynamic from 'next/dynamic'
import { untilHere } from '@/app/_components/ui/until-here'
import { useRef, useState } from 'react'
import { Button } from '@/app/_components/ui/button'
import { TextInput } from '@/app/_components/ui/text-input'
import { parseFigure } from '@/lib/core/units/parse-figure'
import type { StepField } from '@/lib/use-cases/stations/see-step'
import { answerKey, type Answers } from './answers'
import type { CellAsks } from './cell-asks'
import { FigureFields } from './figure-fields'
import type { ReadWithProps } from './read-with'
import type { TakenReading } from './flow-import'
import styles from './flow.module.css'

/** Only those who paste load it. */
const FlowImport = dynamic(() => untilHere(() => import('./flow-import').then((file) => file.FlowImport)), {
  loading: () => <p role="status">One moment …</p>,
})

type Props = {
  /** The lifts that are asked for, both ports. */
  fields: readonly StepField[]
  answers: Answers
  errors: Readonly<Record<string, string>>
  /** Left out: nothing is expected of these figures. */
  asks?: CellAsks
  settled?: ReadonlySet<string>
  onSettle?: (key: string) => void
  readWith?: ReadWithProps
  onChange: (answers: Answers) => void
}

const ports = ['intake', 'exhaust'] as const
const liftOf = (point: string): string => point.split('@')[1] ?? ''
const isTyped = (answer: Answers[string] | undefined): boolean =>
  answer !== undefined && (answer.text !== '' || answer.notTaken !== null)

const noAsks: CellAsks = {}
const noneLeft: ReadonlySet<string> = new Set()
const ignored = (): void => undefined

/** A run, lift by lift. Which lifts are worth flowing is the machinist's choice. */
export function FlowFields({
  fields,
  answers,
  errors,
  asks = noAsks,
  settled = noneLeft,
  onSettle = ignored,
  readWith,
  onChange,
}: Props) {
  const [added, setAdded] = useState<readonly string[]>([])
  const [left, setLeft] = useState<readonly string[]>([])
  const [pasting, setPasting] = useState(false)
  const [said, setSaid] = useState('')
  const opener = useRef<HTMLButtonElement>(null)
  const first = fields[0] as StepField

  const typed = Object.keys(answers)
    .filter((key) => key.startsWith('flow|') && isTyped(answers[key]))
    .map((key) => liftOf(key))
  const asked = fields.map(({ point }) => liftOf(point)).filter((lift) => !left.includes(lift))
  const lifts = [...new Set([...asked, ...added, ...typed])].sort((a, b) => Number(a) - Number(b))
  const stands = (lift: string): boolean =>
    fields.some(({ point, answer }) => liftOf(point) === lift && answer !== null)

  const fieldAt = (point: string): StepField =>
    fields.find((field) => field.point === point) ?? {
      ...first,
      point,
      pointLabel: `${point.replace('@', ' at ')} in`,
      answer: null,
      notTaken: null,
      previous: null,
    }

  function leaveOut(lift: string) {
    setAdded(added.filter((one) => one !== lift))
    setLeft([...left, lift])
    const keys = ports.map((port) => answerKey('flow', `${port}@${lift}`))
    onChange(Object.fromEntries(Object.entries(answers).filter(([key]) => !keys.includes(key))))
    setSaid(`${lift} in left out.`)
  }

  function add(lift: string) {
    setAdded([...added, lift])
    setLeft(left.filter((one) => one !== lift))
    setSaid(`${lift} in added.`)
  }

  function take(readings: readonly TakenReading[], replace: boolean) {
    const fresh = readings
      .map(({ point, text, notTaken }) => [answerKey('flow', point), { text, notTaken }] as const)
      .filter(([key]) => replace || !isTyped(answers[key]))
    const taken = new Set(readings.map(({ point }) => liftOf(point)))
    // The lifts that were only proposed give way to those that were run.
    setLeft(lifts.filter((lift) => !taken.has(lift) && !stands(lift) && !typed.includes(lift)))
    setAdded([...taken])
    onChange({ ...answers, ...Object.fromEntries(fresh) })
    setPasting(false)
    const figures = fresh.filter(([, { text }]) => text !== '').length
    setSaid(`${figures} ${figures === 1 ? 'figure' : 'figures'} taken over. Nothing is saved until you save it.`)
    setTimeout(() => opener.current?.focus())
  }

  return (
    <div className="stack">
      <div>
        <Button ref={opener} aria-expanded={pasting} onClick={() => setPasting(!pasting)}>
          Paste or choose a file
        </Button>
      </div>
      {pasting && <FlowImport answers={answers} onTake={take} onClose={() => setPasting(false)} />}
      <p role="status">{said}</p>
      {ports.map((port) => (
        <FigureFields
          key={port}
          answers={answers}
          errors={errors}
          asks={asks}
          settled={settled}
          onSettle={onSettle}
          readWith={readWith}
          onChange={onChange}
          fields={lifts.map((lift) => ({
            ...fieldAt(`${port}@${lift}`),
            spec: { ...first.spec, label: `${port === 'intake' ? 'Intake' : 'Exhaust'}, cfm at each lift` },
          }))}
        />
      ))}
      <Lifts lifts={lifts} stands={stands} onAdd={add} onLeaveOut={leaveOut} />
    </div>
  )
}

type LiftsProps = {
  lifts: readonly string[]
  stands: (lift: string) => boolean
  onAdd: (lift: string) => void
  onLeaveOut: (lift: string) => void
}

function Lifts({ lifts, stands, onAdd, onLeaveOut }: LiftsProps) {
  const [text, setText] = useState('')
  const [error, setError] = useState('')
  const next = (Number(lifts.at(-1) ?? 0) + 0.1).toFixed(3)

  function add() {
    const read = parseFigure(text, 'lift')
    if (!read.ok) return setError(read.refusal.message)
    const lift = read.value.value.toFixed(3)
    if (lifts.includes(lift)) return setError(`${lift} in is there already.`)
    setText('')
    setError('')
    onAdd(lift)
  }

  return (
    <details>
      <summary>Lifts of this run: {lifts.length}</summary>
      <div className="stack">
        <div className={styles.add}>
          <TextInput
            label="Another lift, in"
            inputMode="decimal"
            value={text}
            error={error}
            onChange={(event) => setText(event.target.value)}
          />
          <Button onClick={add}>Add this lift</Button>
          {Number(next) <= 2 && <Button onClick={() => onAdd(next)}>Add a lift: {next} in</Button>}
        </div>
        <ul className={styles.lifts}>
          {lifts.map((lift) => (
            <li key={lift}>
              <Button variant="quiet" disabled={stands(lift)} onClick={() => onLeaveOut(lift)}>
                {stands(lift) ? `${lift} in stands` : `Leave out ${lift} in`}
              </Button>
            </li>
          ))}
        </ul>
      </div>
    </details>
  )
}
