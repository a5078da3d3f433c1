'use client'
import { createContext, useState } from 'react'

/** Sends the photos of one place; false: one was not saved. */
type Send = () => Promise<boolean>

/** Photos that were chosen on this screen and are not saved yet: they go before the deed that they belong to. */
export type PhotosFirst = {
  /** Gives back how to take it off again. */
  readonly add: (send: Send) => () => void
  readonly any: () => boolean
  readonly sendAll: Send
}

export const PhotosFirstContext = createContext<PhotosFirst | null>(null)

export function usePhotosFirst(): PhotosFirst {
  const [photos] = useState(photosFirst)
  return photos
}

function photosFirst(): PhotosFirst {
  const waiting = new Set<Send>()
  return {
    add(send) {
      waiting.add(send)
      return () => waiting.delete(send)
    },
    any: () => waiting.size > 0,
    async sendAll() {
      const saved = await Promise.all([...waiting].map((send) => send()))
      return saved.every(Boolean)
    },
  }
}
