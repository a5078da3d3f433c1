import type { KeptScreen, Store } from '@/app/_components/outbox/store'
import type { Refusal } from '@/lib/core/errors'
import { keyText } from '@/lib/core/route/keys'
import type { Station, StepKey } from '@/lib/core/route/step-ids'
import type { Queue } from '@/lib/use-cases/stations/see-queue'
import type { FirstQueue, StationView, StepAnswer, StepView } from '@/lib/web/station-view'
import { stepQuery } from '../step-href'

/** What the server said to a question. `away`: no answer, or one that says "not now". */
export type Got =
  | { readonly is: 'ok'; readonly body: unknown }
  | { readonly is: 'away' | 'signed-out' }
  | { readonly is: 'refused'; readonly refusal: Refusal }

export type StationState = {
  readonly station: Station | null
  readonly queue: Queue | null
  /** When the queue was so, by the shop's clock, ISO 8601; '' while there is none. */
  readonly at: string
  /** By `stepPlace`. */
  readonly steps: ReadonlyMap<string, StepAnswer>
  /** Number of the newest change known here. */
  readonly newest: number
  /** Which build of the app the server is; '' while it has not said. */
  readonly build: string
  /** The server did not answer the last question: what is shown is what is kept. */
  readonly away: boolean
  readonly signedOut: boolean
  /** Why a step cannot be shown, by `stepPlace`: there is no such head. */
  readonly refused: ReadonlyMap<string, Refusal>
}

export const stepPlace = (visitId: string, key: StepKey): string => `${visitId} ${keyText(key)}`

/** So many steps that were looked at stay known when they leave the station. */
const mostOpened = 5

type Means = {
  /** Null: this browser keeps nothing. */
  readonly store: Promise<Pick<Store, 'station' | 'screens' | 'keepStation' | 'keepScreen'> | null>
  /** Who is at the tablet and which build drew the page: what is kept for another is not looked at. */
  readonly owner: string
  /** The build of this page. What another one says may have another shape. */
  readonly build: string
  readonly ask: (address: string) => Promise<Got>
  /** The queue that came with the page; null or left out: none did. */
  readonly first?: FirstQueue | null
}

export const nothingKept: StationState = {
  station: null,
  queue: null,
  at: '',
  steps: new Map(),
  newest: 0,
  build: '',
  away: false,
  signedOut: false,
  refused: new Map(),
}

/**
 * What this tablet knows of its station: at once what it kept, then what the server says, which is kept in its place. Each
 * question asks only for what changed since the last.
 */
export class StationKeeper {
  private state: StationState
  private readonly listeners = new Set<() => void>()
  private opened: readonly string[] = []
  /** Whose kept screens were looked for. */
  private lookedFor: Station | null = null
  /** Number of the newest change that queue and steps both show; null: the steps are not known yet. */
  private wholeTo: number | null = null
  private asking: Promise<void> | null = null
  private again = false

  constructor(private readonly means: Means) {
    this.state = { ...nothingKept, ...means.first }
  }

  readonly snapshot = (): StationState => this.state

  readonly subscribe = (listener: () => void): (() => void) => {
    this.listeners.add(listener)
    return () => this.listeners.delete(listener)
  }

  /** Shows what is kept of the station and asks the server for the rest. */
  async open(station: Station): Promise<void> {
    if (this.state.station !== station) this.set({ ...nothingKept, station })
    if (this.lookedFor !== station) {
      this.lookedFor = station
      this.wholeTo = null
      await this.readKept(station)
    }
    await this.refresh()
  }

  /** One question at a time; what changed meanwhile is asked for once more. */
  refresh(): Promise<void> {
    if (this.asking) {
      this.again = true
      return this.asking
    }
    this.asking = this.askUntilQuiet().finally(() => {
      this.asking = null
    })
    return this.asking
  }

  /** The step as it is now, also one that is not ready or started here. */
  async openStep(station: Station, visitId: string, key: StepKey): Promise<void> {
    const place = stepPlace(visitId, key)
    this.opened = [place, ...this.opened.filter((one) => one !== place)].slice(0, mostOpened)
    const got = await this.means.ask(`/api/stations/${station}/step?visit=${visitId}&${stepQuery(key)}`)
    if (this.state.station !== station || !this.take(got)) return
    if (got.is === 'refused') return this.set({ refused: new Map(this.state.refused).set(place, got.refusal) })
    if (got.is !== 'ok') return
    const { answer, at, build } = got.body as StepView
    if (this.isOfAnother(build)) return
    // What else changed by then is not known here: the number of the newest change grows with the queue's answer alone.
    const refused = new Map(this.state.refused)
    refused.delete(place)
    this.set({ steps: new Map(this.state.steps).set(place, answer), refused })
    await this.keep((store) => store.keepScreen(this.screenOf(place, answer, at)))
  }

  private async askUntilQuiet(): Promise<void> {
    do {
      this.again = false
      const { station } = this.state
      if (!station) return
      const since = this.wholeTo === null ? '' : `?since=${this.wholeTo}`
      const got = await this.means.ask(`/api/stations/${station}${since}`)
      if (this.state.station === station && this.take(got) && got.is === 'ok')
        await this.takeStation(got.body as StationView)
    } while (this.again && !this.state.away && !this.state.signedOut)
  }

  /** Whether the server answered. */
  private take(got: Got): boolean {
    const away = got.is === 'away'
    const signedOut = got.is === 'signed-out'
    if (away !== this.state.away || signedOut !== this.state.signedOut) this.set({ away, signedOut })
    return !away && !signedOut
  }

  private async takeStation({ queue, steps: told, newest, at, build }: StationView): Promise<void> {
    if (this.isOfAnother(build)) return
    const stay = new Set([...queue.ready, ...queue.started].map(({ visitId, step }) => stepPlace(visitId, step)))
    const fresh = told.map(({ visitId, key, answer }) => [stepPlace(visitId, key), answer] as const)
    // What left the station goes, but for what was looked at last: somebody may be at it.
    const before = [...this.state.steps].filter(([place]) => stay.has(place) || this.opened.includes(place))
    const steps = new Map([...before, ...fresh])
    this.wholeTo = newest
    this.set({ queue: this.asBefore(queue), steps, newest, at, build })
    const kept = { station: this.state.station ?? '', owner: this.means.owner, newest, at, body: queue }
    const screens = fresh.map(([place, answer]) => this.screenOf(place, answer, at))
    await this.keep((store) => store.keepStation(kept, screens, stay))
  }

  /** Then what is known stays, and the page loads itself anew once nothing is under way (`watch-build.ts`). */
  private isOfAnother(build: string): boolean {
    if (build === this.means.build) return false
    this.set({ build })
    return true
  }

  /** The queue that is shown, while the server's is word for word the same: what draws it then leaves it as it is. */
  private asBefore(queue: Queue): Queue {
    const { queue: shown } = this.state
    return shown && JSON.stringify(shown) === JSON.stringify(queue) ? shown : queue
  }

  private async readKept(station: Station): Promise<void> {
    await this.keep(async (store) => {
      const { owner } = this.means
      const [kept, screens] = [await store.station(station, owner), await store.screens(station, owner)]
      if (!kept || this.state.station !== station || this.wholeTo !== null) return
      // A step that the server told meanwhile is newer than the kept one.
      const steps = new Map([...screens.map(({ id, body }) => [id, body as StepAnswer] as const), ...this.state.steps])
      this.wholeTo = kept.newest
      // A queue that came with the page is newer.
      const queue = { queue: kept.body as Queue, at: kept.at, newest: kept.newest }
      this.set({ ...(this.state.queue === null && queue), steps })
    })
  }

  private screenOf(place: string, answer: StepAnswer, at: string): KeptScreen {
    return { id: place, station: this.state.station ?? '', owner: this.means.owner, at, body: answer }
  }

  /** What cannot be kept is shown all the same. */
  private async keep(
    work: (store: Pick<Store, 'station' | 'screens' | 'keepStation' | 'keepScreen'>) => Promise<void>,
  ) {
    const store = await this.means.store
    if (store) await work(store).catch(() => {})
  }

  private set(part: Partial<StationState>): void {
    this.state = { ...this.state, ...part }
    for (const listener of this.listeners) listener()
  }
}
