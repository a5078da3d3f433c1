'use client'
import { useEffect, type ReactNode } from 'react'
import type { Station } from '@/lib/core/route/step-ids'
import { isEditing, useFollow } from '@/app/_components/use-follow'
import { Loading } from '@/app/_components/ui/loading'
import { HereProvider, useDrawnByPage, useHere, useKept, useMaybeHere, useOutbox, type Person } from './here'
import { QueueView, StepView } from './later'
import { useLoadAhead } from './use-load-ahead'
import { useCatchUp } from './use-catch-up'
import { usePlace } from './use-place'
import type { ShopWords } from './shop-words'

type Props = { person: Person; words: ShopWords; children: ReactNode }

/**
 * The stations as one app of this browser: queue and steps are drawn from what is kept here, with and without the network.
 * `children`: what the server has for the address beside them.
 */
export function StationApp({ person, words, children }: Props) {
  return (
    <HereProvider person={person} build={words.build}>
      <Screens words={words} />
      {children}
    </HereProvider>
  )
}

function Screens({ words }: Pick<Props, 'words'>) {
  const here = useMaybeHere()
  const drawn = useDrawnByPage()
  const place = usePlace()
  if (place === null || place.is === 'rack' || (place.is === 'queue' && place.page > 1)) return null
  if (!here) return place.is === 'step' ? <Loading /> : null
  return (
    <>
      <Following station={place.station} build={words.build} />
      {place.is === 'step' ? (
        <StepView key={JSON.stringify(place)} at={place} words={words} />
      ) : (
        place.station !== drawn && <QueueView key={place.station} station={place.station} words={words} />
      )}
    </>
  )
}

const askAgainMs = 5000

/** Opens the station, and goes on asking for what changes: in the shop, and with what is sent from here. */
function Following({ station, build }: { station: Station; build: string }) {
  const { keeper, outbox } = useHere()
  const { newest, away, build: told, steps } = useKept()
  const { late } = useOutbox()
  const catchUp = useCatchUp()
  useEffect(() => void keeper.open(station), [keeper, station])
  useEffect(() => {
    if (late > 0) void catchUp()
  }, [catchUp, late])
  useEffect(() => {
    // The server is there: what waits for it need not wait for its own pause.
    if (!away) return void outbox.wake()
    // Nothing else asks again: without a change nobody hears that the server is back.
    const timer = setInterval(() => !isEditing() && void catchUp(), askAgainMs)
    return () => clearInterval(timer)
  }, [away, catchUp, outbox])
  useFollow(newest, () => void catchUp())
  // Without the server what is not kept does not come: the parts are fetched once it is back.
  useLoadAhead(build, away || told !== '' || steps.size > 0)
  return null
}
