'use client'
import { useEffect, useRef, type ReactNode } from 'react'
import type { Station } from '@/lib/core/route/step-ids'
import { useFollow } from '@/app/_components/use-follow'
import { Loading } from '@/app/_components/ui/loading'
import { HereProvider, useKept, useMaybeHere, useOutbox, type Person } from './here'
import { QueueView, StepView } from './later'
import { useLoadAhead } from './load-ahead'
import { useCatchUp } from './use-catch-up'
import { usePlace } from './use-place'

/** What the shop calls its stations, and how it writes days and times. */
export type ShopWords = {
  readonly names: Readonly<Record<Station, string>>
  readonly locale: string
  readonly timeZone: string
}

type Props = { person: Person; words: ShopWords; children: ReactNode }

/**
 * The stations as one app of this browser: queue and steps are drawn from what is kept here, with and without the network.
 * `children`: what the server has for the address beside them.
 */
export function StationApp({ person, words, children }: Props) {
  return (
    <HereProvider person={person}>
      <Screens words={words} />
      {children}
    </HereProvider>
  )
}

function Screens({ words }: { words: ShopWords }) {
  const here = useMaybeHere()
  const place = usePlace()
  if (place === null || place.is === 'rack' || (place.is === 'queue' && place.page > 1)) return null
  if (!here) return <Loading />
  return (
    <>
      <Following station={place.station} />
      {place.is === 'queue' ? (
        <QueueView key={place.station} station={place.station} words={words} />
      ) : (
        <StepView key={JSON.stringify(place)} at={place} words={words} />
      )}
    </>
  )
}

/** Opens the station, and goes on asking for what changes: in the shop, and with what is sent from here. */
function Following({ station }: { station: Station }) {
  const { keeper } = useMaybeHere() ?? {}
  const { newest } = useKept()
  const waiting = useOutbox().deeds.length
  const catchUp = useCatchUp()
  useEffect(() => void keeper?.open(station), [keeper, station])
  const before = useRef(waiting)
  useEffect(() => {
    // One fewer: it went through, or was taken off the list.
    if (waiting < before.current) void catchUp()
    before.current = waiting
  }, [catchUp, waiting])
  useFollow(newest, () => void catchUp())
  useLoadAhead()
  return null
}
