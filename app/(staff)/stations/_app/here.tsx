'use client'
import { createContext, use, useEffect, useState, useSyncExternalStore, type ReactNode } from 'react'
import { Outbox } from '@/app/_components/outbox/outbox'
import { ask } from './ask'
import { StationKeeper } from './keeper'

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

export const useOutbox = () => {
  const { outbox } = useHere()
  return useSyncExternalStore(outbox.subscribe, outbox.snapshot, outbox.snapshot)
}

export const useKept = () => {
  const { keeper } = useHere()
  return useSyncExternalStore(keeper.subscribe, keeper.snapshot, keeper.snapshot)
}

type Props = { person: Person; build: string; children: ReactNode }

export function HereProvider({ person, build, children }: Props) {
  const [here, setHere] = useState<Here | null>(null)
  const { id, name } = person
  useEffect(() => {
    const outbox = new Outbox(id)
    setHere({
      person: { id, name },
      outbox,
      keeper: new StationKeeper({ store: outbox.store, owner: `${id} ${build}`, ask }),
    })
    const wake = () => void outbox.wake()
    window.addEventListener('online', wake)
    return () => {
      window.removeEventListener('online', wake)
      outbox.close()
    }
  }, [id, name, build])
  return <HereContext value={here}>{children}</HereContext>
}
