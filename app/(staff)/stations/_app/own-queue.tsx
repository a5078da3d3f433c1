'use client'
import { useLayoutEffect } from 'react'
import type { FirstQueue } from '@/lib/web/station-view'
import { useDrawQueue } from './here'
import { QueueView } from './queue-view'
import type { ShopWords } from './shop-words'
import { usePlace } from './use-place'

/**
 * The queue that the page was asked for: it stands in the page before any script is here, and goes on as a screen of the
 * station app. Another screen takes its place while the address shows another.
 */
export function OwnQueue({ first, words }: { first: FirstQueue; words: ShopWords }) {
  const { station } = first
  const draw = useDrawQueue()
  const place = usePlace()
  // Before anything is painted: else two would be drawn for a moment.
  useLayoutEffect(() => draw(first), [draw, first])
  const isHere = place?.is === 'queue' && place.station === station && place.page === 1
  return isHere && <QueueView station={station} words={words} first={first} />
}
