'use client'
import { useId, type KeyboardEvent, type Ref } from 'react'
import type { Mark } from '@/app/_components/keypad/validation-hint'
import { Sign } from '@/app/_components/ui/sign'
import styles from './valve-sheet.module.css'

type Props = {
  ref?: Ref<HTMLInputElement>
  label: string
  cell: string
  /** What stands there already. */
  placeholder: string
  filled: boolean
  mark: Mark
  current: boolean
  disabled?: boolean
  onCell: (cell: string) => void
  onFocus: () => void
  onLeave: () => void
  onNext: () => void
  /** Up: −1, down: 1. */
  onMove: (by: number) => void
}

/** One figure of one valve. What is said of it at length stands by the keypad; here is a sign and a word. */
export function ValveCell(props: Props) {
  const { ref, label, cell, placeholder, filled, mark, current, disabled = false } = props
  const id = useId()

  function keyDown(event: KeyboardEvent<HTMLInputElement>) {
    const move = { ArrowUp: -1, ArrowDown: 1 }[event.key]
    if (event.key !== 'Enter' && move === undefined) return
    event.preventDefault()
    if (move === undefined) props.onNext()
    else props.onMove(move)
  }

  return (
    <div
      className={styles.cell}
      data-current={current || undefined}
      data-mark={mark.kind}
      data-filled={filled || undefined}
    >
      {/* inputMode none: our own keys stand beside the grid, the device's would cover it; a real keyboard still types. */}
      <input
        ref={ref}
        type="text"
        inputMode="none"
        autoComplete="off"
        spellCheck={false}
        enterKeyHint="next"
        aria-label={label}
        aria-invalid={mark.kind === 'refused' || undefined}
        aria-describedby={`${id}-state`}
        className={styles.input}
        data-figure={disabled || (placeholder !== '' && !current) ? undefined : ''}
        value={cell}
        placeholder={placeholder}
        disabled={disabled}
        onChange={(event) => props.onCell(event.target.value)}
        onFocus={props.onFocus}
        onBlur={props.onLeave}
        onKeyDown={keyDown}
      />
      <span id={`${id}-state`} className={styles.state}>
        {mark.kind === 'refused' && <Sign kind="stop" />}
        {mark.kind === 'out' && <Sign kind="caution" />} {stateWord(mark, filled)}
        <span className="visually-hidden">{mark.kind === 'read' || mark.kind === 'none' ? '' : mark.words}</span>
      </span>
    </div>
  )
}

function stateWord({ kind }: Mark, filled: boolean): string {
  if (kind === 'refused') return 'stop'
  if (kind === 'out') return 'look'
  return filled ? 'filled' : ''
}
