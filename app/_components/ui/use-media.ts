'use client'
import { useSyncExternalStore } from 'react'

/** Whether a media query holds; on the server, and before the first look, `atFirst`. */
export function useMedia(query: string, atFirst: boolean): boolean {
  return useSyncExternalStore(
    (changed) => {
      const media = window.matchMedia(query)
      media.addEventListener('change', changed)
      return () => media.removeEventListener('change', changed)
    },
    () => window.matchMedia(query).matches,
    () => atFirst,
  )
}
