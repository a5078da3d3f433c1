import { openDB, type DBSchema, type IDBPDatabase } from 'idb'
import type { KeptDeed, NewDeed } from './kept'
import type { Settled } from './rules'

interface Schema extends DBSchema {
  deeds: { key: number; value: KeptDeed; indexes: { id: string } }
  stations: { key: string; value: AsText<KeptStation> }
  steps: { key: string; value: AsText<KeptScreen>; indexes: { station: string } }
}

/** Answers are kept as text: a browser copies a station's steps as objects in ten times the time, while a finger waits. */
type AsText<Kept extends { readonly body: unknown }> = Omit<Kept, 'body'> & { readonly body: string }
const asText = <Kept extends { readonly body: unknown }>(kept: Kept) => ({ ...kept, body: JSON.stringify(kept.body) })
const asTold = <Kept extends { readonly body: string }>(kept: Kept) => ({
  ...kept,
  body: JSON.parse(kept.body) as unknown,
})

/** The queue of a station as it was when the server last told; `body` is what the server said. */
export type KeptStation = {
  readonly station: string
  /** Whom it was told to, and by which build: another one may not see it, or not know its shape. */
  readonly owner: string
  /** Number of the newest change that it shows. */
  readonly newest: number
  /** When it was so, by the shop's clock, ISO 8601. */
  readonly at: string
  readonly body: unknown
}

/** One step of one head there. `id`: of visit and step. */
export type KeptScreen = {
  readonly id: string
  readonly station: string
  readonly owner: string
  readonly at: string
  readonly body: unknown
}

/** What this device keeps: deeds that were not sent yet, and the stations that were opened here. */
export type Store = {
  readonly deeds: () => Promise<KeptDeed[]>
  /** Kept once: the same id again changes nothing. */
  readonly addDeed: (deed: NewDeed) => Promise<void>
  readonly settleDeeds: (settled: Settled) => Promise<void>
  readonly station: (station: string, owner: string) => Promise<KeptStation | null>
  readonly screens: (station: string, owner: string) => Promise<KeptScreen[]>
  /** The queue and the screens that came with it; screens of the station that are in neither list go. */
  readonly keepStation: (kept: KeptStation, screens: readonly KeptScreen[], stay: ReadonlySet<string>) => Promise<void>
  readonly keepScreen: (screen: KeptScreen) => Promise<void>
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
      fresh.createObjectStore('steps', { keyPath: 'id' }).createIndex('station', 'station')
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
    async station(station, owner) {
      const kept = await db.get('stations', station)
      return kept && kept.owner === owner ? asTold(kept) : null
    },
    async screens(station, owner) {
      const kept = await db.getAllFromIndex('steps', 'station', station)
      return kept.filter((screen) => screen.owner === owner).map(asTold)
    },
    keepStation: (kept, screens, stay) => keepStation(db, kept, screens, stay),
    async keepScreen(screen) {
      await db.put('steps', asText(screen))
    },
    async forgetStations() {
      await Promise.all([db.clear('stations'), db.clear('steps')])
    },
    close: () => db.close(),
  }
}

async function keepStation(
  db: IDBPDatabase<Schema>,
  kept: KeptStation,
  screens: readonly KeptScreen[],
  stay: ReadonlySet<string>,
): Promise<void> {
  const tx = db.transaction(['stations', 'steps'], 'readwrite')
  const steps = tx.objectStore('steps')
  const before = await steps.index('station').getAllKeys(kept.station)
  await Promise.all([
    tx.objectStore('stations').put(asText(kept)),
    ...before.filter((id) => !stay.has(id)).map((id) => steps.delete(id)),
    ...screens.map((screen) => steps.put(asText(screen))),
    tx.done,
  ])
}

async function addDeed(db: IDBPDatabase<Schema>, deed: NewDeed): Promise<void> {
  const tx = db.transaction('deeds', 'readwrite')
  const known = await tx.store.index('id').getKey(deed.id)
  // The number is the store's to give: it counts on, also after all deeds are gone.
  if (known === undefined) await tx.store.add(deed as KeptDeed)
  await tx.done
}
