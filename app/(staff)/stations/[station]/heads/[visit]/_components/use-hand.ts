'use client'
import { useEffect, useState } from 'react'

export type Hand = 'left' | 'right'

const place = 'keypad side'

/** On which side the keypad stands: a choice of whoever works at this device, kept on it. */
export function useHand(): { hand: Hand; turnHand: () => void } {
  const [hand, setHand] = useState<Hand>('right')
  useEffect(() => {
    if (kept() === 'left') setHand('left')
  }, [])
  return {
    hand,
    turnHand() {
      const next = hand === 'left' ? 'right' : 'left'
      setHand(next)
      keep(next)
    },
  }
}

function kept(): string | null {
  try {
    return localStorage.getItem(place)
  } catch {
    return null
  }
}

function keep(hand: Hand): void {
  try {
    localStorage.setItem(place, hand)
  } catch {
    // A device that keeps nothing has the keypad at the right again.
  }
}
