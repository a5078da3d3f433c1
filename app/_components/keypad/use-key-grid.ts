'use client'
import { useState, type KeyboardEvent } from 'react'

/**
 * Keys in rows as one tab stop: arrows move among them, and what had the focus last is where a tab comes back to. `stop`:
 * the place of the key that a tab comes to first.
 */
export function useKeyGrid(columns: number, stop = 0) {
  const [at, setAt] = useState(stop)
  const steps: Readonly<Record<string, number>> = {
    ArrowLeft: -1,
    ArrowRight: 1,
    ArrowUp: -columns,
    ArrowDown: columns,
  }

  function onKeyDown(event: KeyboardEvent<HTMLElement>) {
    const step = steps[event.key]
    if (step === undefined) return
    event.preventDefault()
    event.currentTarget.querySelectorAll('button')[at + step]?.focus()
  }

  return {
    onKeyDown,
    /** For the key at this place. */
    keyAt: (place: number) => ({ tabIndex: place === at ? 0 : -1, onFocus: () => setAt(place) }),
  }
}
