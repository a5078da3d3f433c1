'use client'
import type { Ref } from 'react'
import type { Mark } from '@/app/_components/keypad/validation-hint'
import styles from './valve-sheet.module.css'

type Props = {
  name: string
  mark: Mark
  /** What the cell is held against: wanted, expected, before. */
  beside: readonly (readonly [label: string, words: string])[]
  filled: boolean
  /** The figure that "measured" says again; '' when nothing is filled there. */
  onMeasured: (() => void) | null
  slip: string | null
  onSlip: (slip: string) => void
  /** Null: nothing has to be typed again. */
  again: { readonly cell: string; readonly differs: boolean } | null
  againRef: Ref<HTMLInputElement>
  onAgain: (cell: string) => void
  onAgainFocus: () => void
  onNext: () => void
}

/** What is to be known of the cell that the keypad writes into. */
export function AboutCell(props: Props) {
  const { name, mark, beside, filled, onMeasured, slip, again } = props
  return (
    <div className={styles.about} data-mark={mark.kind}>
      <span className={styles.name}>{name}</span>
      <span aria-live="polite" className={styles.said}>
        {mark.words}
      </span>
      {filled && <span>Filled, not measured.</span>}
      {beside
        .filter(([, words]) => words !== '')
        .map(([label, words]) => (
          <span key={label} className="soft">
            {label} {words}
          </span>
        ))}
      {slip && (
        <button type="button" className={styles.deed} onClick={() => props.onSlip(slip)}>
          {slip}?
        </button>
      )}
      {onMeasured && (
        <button type="button" className={styles.deed} onClick={onMeasured}>
          I measured this valve: same figure
        </button>
      )}
      {again && (
        <label className={styles.again}>
          Again: {name}
          <input
            ref={props.againRef}
            type="text"
            inputMode="none"
            autoComplete="off"
            className={styles.input}
            value={again.cell}
            onChange={(event) => props.onAgain(event.target.value)}
            onFocus={props.onAgainFocus}
            onKeyDown={(event) => {
              if (event.key !== 'Enter') return
              event.preventDefault()
              props.onNext()
            }}
          />
          {again.differs && <span>Not the figure beside it. Correct one of the two.</span>}
        </label>
      )}
    </div>
  )
}
