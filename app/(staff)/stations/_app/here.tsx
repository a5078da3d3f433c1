'use client'
import {
  createContext,
  use,
  useCallback,
  useEffect,
  useRef,
  useState,
  useSyncExternalStore,
  type ReactNode,
} from 'react'
import { nothingDone, Outbox } from '@/app/_components/outbox/outbox'
import type { Station } from '@/lib/core/route/step-ids'
import type { FirstQueue } from '@/lib/web/station-view'
import { ask } from './ask'
import { nothingKept, StationKeeper } from './keeper'

export type Person = { readonly id: string; readonly name: string }

/** What the screens of the station app share: who is at it, what is kept of the station, what was done and not sent. */
export type Here = { readonly person: Person; readonly keeper: StationKeeper; readonly outbox: Outbox }

const HereContext = createContext<Here | null>(null)

export function useHere(): Here {
  const here = use(HereContext)
  if (!here) throw new Error('Outside of the station app')
  return here
}

/** Null while the page comes up: what is kept is in the browser alone. */
export const useMaybeHere = (): Here | null => use(HereContext)

const neverChanges = () => () => {}
const noDeeds = () => nothingDone
const noStation = () => nothingKept

export const useOutbox = () => {
  const { subscribe = neverChanges, snapshot = noDeeds } = useMaybeHere()?.outbox ?? {}
  return useSyncExternalStore(subscribe, snapshot, snapshot)
}

export const useKept = () => {
  const { subscribe = neverChanges, snapshot = noStation } = useMaybeHere()?.keeper ?? {}
  return useSyncExternalStore(subscribe, snapshot, snapshot)
}

const DrawnContext = createContext<Station | null>(null)
const DrawContext = createContext<(first: FirstQueue) => () => void>(neverChanges)

/** The station whose queue the page under the app draws; null: none. */
export const useDrawnByPage = () => use(DrawnContext)

/** For that page: tells the app that it draws this queue, until what is given back is called. */
export const useDrawQueue = () => use(DrawContext)

type Props = { person: Person; build: string; children: ReactNode }

export function HereProvider({ person, build, children }: Props) {
  const [here, setHere] = useState<Here | null>(null)
  const [drawn, setDrawn] = useState<Station | null>(null)
  // The page tells it as it comes up, before the keeper is there.
  const first = useRef<FirstQueue | null>(null)
  const draw = useCallback((queue: FirstQueue) => {
    first.current = queue
    setDrawn(queue.station)
    return () => setDrawn(null)
  }, [])
  const { id, name } = person
  useEffect(() => {
    const outbox = new Outbox(id)
    setHere({
      person: { id, name },
      outbox,
      keeper: new StationKeeper({ store: outbox.store, owner: `${id} ${build}`, build, ask, first: first.current }),
    })
    const wake = () => void outbox.wake()
    window.addEventListener('online', wake)
    return () => {
      window.removeEventListener('online', wake)
      outbox.close()
    }
  }, [id, name, build])
  return (
    <DrawContext value={draw}>
      <DrawnContext value={drawn}>
        <HereContext value={here}>{children}</HereContext>
      </DrawnContext>
    </DrawContext>
  )
}
