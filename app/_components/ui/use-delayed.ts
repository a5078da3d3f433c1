'use client'
import { useEffect, useState } from 'react'

/** True once `on` has lasted for half a second: what is quicker than that needs no progress shown. */
export function useDelayed(on: boolean, afterMs = 500): boolean {
  const [late, setLate] = useState(false)
  useEffect(() => {
    if (!on) return
    const timer = setTimeout(() => setLate(true), afterMs)
    return () => {
      clearTimeout(timer)
      setLate(false)
    }
  }, [on, afterMs])
  return on && late
}
