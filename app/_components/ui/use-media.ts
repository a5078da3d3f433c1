'use client'
import { useSyncExternalStore } from 'react'

/** Asked at every look at a page: each query is read once and kept. */
const known = new Map<string, MediaQueryList>()

function mediaOf(query: string): MediaQueryList {
  const media = known.get(query) ?? window.matchMedia(query)
  known.set(query, media)
  return media
}

/** Whether a media query holds; on the server, and before the first look, `atFirst`. */
export function useMedia(query: string, atFirst: boolean): boolean {
  return useSyncExternalStore(
    (changed) => {
      const media = mediaOf(query)
      media.addEventListener('change', changed)
      return () => media.removeEventListener('change', changed)
    },
    () => mediaOf(query).matches,
    () => atFirst,
  )
}
