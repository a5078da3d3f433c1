import { openDB, type DBSchema, type IDBPDatabase } from 'idb'
import type { KeptDeed, NewDeed } from './kept'
import type { Settled } from './rules'

interface Schema extends DBSchema {
  deeds: { key: number; value: KeptDeed; indexes: { id: string } }
  stations: { key: string; value: KeptStation }
}

/** A station as it was when the server last told, as text: its screens are read when one is opened. */
export type KeptStation = {
  readonly station: string
  readonly version: string
  /** When it was so, by the shop's clock, ISO 8601. */
  readonly at: string
  readonly personId: string
  readonly body: unknown
}

/** What this device keeps: deeds that were not sent yet, and the stations that were opened here. */
export type Store = {
  readonly deeds: () => Promise<KeptDeed[]>
  /** Kept once: the same id again changes nothing. */
  readonly addDeed: (deed: NewDeed) => Promise<void>
  readonly settleDeeds: (settled: Settled) => Promise<void>
  readonly station: (station: string, personId: string) => Promise<KeptStation | null>
  readonly keepStation: (kept: KeptStation) => Promise<void>
  /** On sign-out: what was read goes, what was done and not sent stays for its person. */
  readonly forgetStations: () => Promise<void>
  readonly close: () => void
}

/** Refused by the browser (private window, full disk): rejects, so that it can be said before anything is typed. */
export async function openStore(name = 'brasstag'): Promise<Store> {
  const db = await openDB<Schema>(name, 1, {
    upgrade(fresh) {
      fresh
        .createObjectStore('deeds', { keyPath: 'seq', autoIncrement: true })
        .createIndex('id', 'id', { unique: true })
      fresh.createObjectStore('stations', { keyPath: 'station' })
    },
  })
  return {
    deeds: () => db.getAll('deeds'),
    addDeed: (deed) => addDeed(db, deed),
    async settleDeeds({ gone, changed }) {
      const tx = db.transaction('deeds', 'readwrite')
      await Promise.all([
        ...gone.map((seq) => tx.store.delete(seq)),
        ...changed.map((deed) => tx.store.put(deed)),
        tx.done,
      ])
    },
    async station(station, personId) {
      const kept = await db.get('stations', station)
      return kept && kept.personId === personId ? kept : null
    },
    async keepStation(kept) {
      await db.put('stations', kept)
    },
    forgetStations: () => db.clear('stations'),
    close: () => db.close(),
  }
}

async function addDeed(db: IDBPDatabase<Schema>, deed: NewDeed): Promise<void> {
  const tx = db.transaction('deeds', 'readwrite')
  const known = await tx.store.index('id').getKey(deed.id)
  // The number is the store's to give: it counts on, also after all deeds are gone.
  if (known === undefined) await tx.store.add(deed as KeptDeed)
  await tx.done
}
