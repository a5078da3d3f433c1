'use client'
import { useEffect, useId, useRef, type KeyboardEvent } from 'react'
import { buzz } from '../ui/buzz'
import { Sign } from '../ui/sign'
import styles from './keypad.module.css'
import type { Mark } from './validation-hint'

export type CellWords = {
  label: string
  /** Figure and unit, as they are to be read: "64.2 cc". */
  previous?: string | undefined
  target?: string | undefined
  /** "63.9 ± 1.5 cc, the other chambers". */
  expected?: string | undefined
}

type Props = CellWords & {
  ref?: (node: HTMLInputElement | null) => void
  cell: string
  unit: string
  mark: Mark
  current: boolean
  onCell: (cell: string) => void
  onFocus?: () => void
  onLeave?: () => void
  onNext: () => void
}

export function FigureCell({
  ref,
  label,
  previous,
  target,
  expected,
  cell,
  unit,
  mark,
  current,
  onCell,
  onFocus,
  onLeave,
  onNext,
}: Props) {
  const id = useId()
  const input = useRef<HTMLInputElement>(null)
  const isRefused = mark.kind === 'refused'

  // Refused once it was left: while it is typed, half a figure is no wrong figure.
  useEffect(() => {
    if (isRefused && document.activeElement !== input.current) buzz()
  }, [isRefused])

  function leave() {
    if (isRefused) buzz()
    onLeave?.()
  }

  function take(node: HTMLInputElement | null) {
    input.current = node
    ref?.(node)
  }

  function keyDown(event: KeyboardEvent<HTMLInputElement>) {
    if (event.key !== 'Enter') return
    event.preventDefault()
    onNext()
  }

  return (
    <div className={styles.cell} data-current={current || undefined} data-mark={mark.kind}>
      <label htmlFor={id} className={styles.cellLabel}>
        {label}
      </label>
      <div className={styles.entry}>
        {/* inputMode none: our own keys stand below, the device's would cover them; a real keyboard still types. */}
        <input
          ref={take}
          id={id}
          type="text"
          inputMode="none"
          autoComplete="off"
          spellCheck={false}
          data-figure
          enterKeyHint="next"
          className={styles.input}
          value={cell}
          aria-invalid={mark.kind === 'refused' || undefined}
          aria-describedby={`${id}-beside ${id}-mark`}
          onChange={(event) => onCell(event.target.value)}
          onFocus={onFocus}
          onBlur={leave}
          onKeyDown={keyDown}
        />
        <span className={styles.cellUnit}>{unit}</span>
      </div>
      <p id={`${id}-mark`} aria-live="polite" className={styles.mark}>
        {mark.kind === 'refused' && <Sign kind="stop" />}
        {mark.kind === 'out' && <Sign kind="caution" />} {mark.words}
      </p>
      <dl id={`${id}-beside`} className={styles.beside}>
        {previous && (
          <div>
            <dt>before</dt>
            <dd>{previous}</dd>
          </div>
        )}
        {target && (
          <div>
            <dt>target</dt>
            <dd>{target}</dd>
          </div>
        )}
        {expected && (
          <div>
            <dt>expected</dt>
            <dd>{expected}</dd>
          </div>
        )}
      </dl>
    </div>
  )
}
