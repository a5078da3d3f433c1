import { useCallback, useEffect, useRef } from 'react'
import { useHere } from './here'
import { usePlace } from './use-place'

/** Asks the server for the station and the step that is open, and waits for both. */
export function useCatchUp(): () => Promise<void> {
  const { keeper } = useHere()
  const place = usePlace()
  const at = useRef(place)
  useEffect(() => {
    at.current = place
  })
  return useCallback(async () => {
    const { current } = at
    const step = current?.is === 'step' ? keeper.openStep(current.station, current.visitId, current.key) : null
    await Promise.all([keeper.refresh(), step])
  }, [keeper])
}
