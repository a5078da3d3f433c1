/**
 * A shop that never was, played through event by event and knowing nothing of how a finish is worked out: heads come in by
 * chance, each goes through benches with one person each, the earliest promise first; most go to a vendor, who takes a
 * log-normal time; on some a finding waits for the customer. Monday to Friday, from a Monday; time in open days.
 */
export type Past = {
  readonly step: number
  readonly readyAt: number
  readonly freeAt: number
  readonly doneAt: number
}

export type SeenHead = {
  readonly id: string
  /** Steps left, by number; the first is the one it is at. */
  readonly left: readonly number[]
  /** Since when it is at it. */
  readonly since: number
  /** In a finding's wait since then; null: none is open. */
  readonly askedAt: number | null
  readonly doneAt: number
}

export type InventedShop = {
  /** Where each step is done; null: at the vendor. */
  readonly route: readonly (number | null)[]
  readonly at: number
  readonly past: readonly Past[]
  /** Whole calendar days that the vendor took; that customers took to answer. */
  readonly vendorDays: readonly number[]
  readonly answerDays: readonly number[]
  readonly head: SeenHead
  /** Heads that stand before it, by station. */
  readonly ahead: readonly number[]
}

export const calendarOf = (place: number): number => Math.floor(place / 5) * 7 + (place % 5)
export const openOf = (day: number): number => Math.floor(day / 7) * 5 + Math.min(day % 7, 5)

type Head = {
  readonly id: number
  readonly promise: number
  step: number
  since: number
  askedAt: number | null
  doneAt: number
  waitingFor: 'bench' | 'work' | 'vendor' | 'answer' | 'gone'
}

/** A small generator of its own: Lehmer, modulus 2³¹ − 1, multiplier 48271 (S. K. Park and K. W. Miller, 1988, revised). */
function chance(seed: number) {
  let state = (seed % 2147483646) + 1
  const next = (): number => {
    state = (state * 48271) % 2147483647
    return state / 2147483647
  }
  const normal = (): number => Math.sqrt(-2 * Math.log(next())) * Math.cos(2 * Math.PI * next())
  return {
    next,
    between: (low: number, high: number): number => low + (high - low) * next(),
    /** Half are longer than the median. */
    logNormal: (median: number, sigma: number): number => median * Math.exp(sigma * normal()),
    gap: (mean: number): number => -mean * Math.log(next()),
  }
}

type Event = { readonly at: number; readonly head: Head; readonly what: 'comes' | 'worked' | 'back' | 'answered' }

type Luck = ReturnType<typeof chance>

class Play {
  readonly heads: readonly Head[]
  private readonly events: Event[] = []
  private readonly past: Past[] = []
  private readonly vendorDays: number[] = []
  private readonly answerDays: number[] = []
  private readonly queues: Head[][]
  private readonly busy: (Head | null)[]
  private readonly freeAt: number[]

  constructor(
    private readonly luck: Luck,
    private readonly route: readonly (number | null)[],
    private readonly habits: Habits,
    headCount: number,
  ) {
    this.queues = habits.works.map(() => [])
    this.busy = habits.works.map(() => null)
    this.freeAt = habits.works.map(() => 0)
    let comes = 0
    this.heads = Array.from({ length: headCount }, (_, id) => {
      comes += luck.gap(habits.gapDays)
      return {
        ...{ id, promise: comes + luck.between(6, 18), step: 0, since: comes },
        ...{ askedAt: null, doneAt: Infinity, waitingFor: 'bench' },
      }
    })
    for (const head of this.heads) this.events.push({ at: head.since, head, what: 'comes' })
  }

  /** Plays to the end; what was known at a moment is noted when it comes. */
  run(seenAt: number): InventedShop {
    let seen: InventedShop | null = null
    let chosen: Head | null = null
    for (let event = this.events.shift(); event; event = this.events.shift()) {
      if (seen === null && event.at > seenAt) {
        const inShop = this.heads.filter((head) => head.since <= seenAt && head.waitingFor !== 'gone')
        chosen = inShop[Math.floor(this.luck.next() * inShop.length)] ?? null
        if (chosen) seen = this.lookAt(chosen, seenAt)
      }
      this.happen(event)
    }
    if (!seen || !chosen) throw new Error('no head was in the shop')
    return { ...seen, head: { ...seen.head, doneAt: chosen.doneAt } }
  }

  private lookAt(head: Head, at: number): InventedShop {
    const isBefore = (other: Head): boolean => other !== head && other.promise < head.promise
    const atWork = (station: number): number => (this.busy[station] && this.busy[station] !== head ? 1 : 0)
    return {
      route: this.route,
      at,
      past: [...this.past],
      vendorDays: this.vendorDays.toReversed(),
      answerDays: this.answerDays.toReversed(),
      ahead: this.queues.map((queue, station) => queue.filter(isBefore).length + atWork(station)),
      head: {
        id: `${this.habits.vendorDays} ${head.id}`,
        left: this.route.slice(head.step).map((_, place) => head.step + place),
        since: head.since,
        askedAt: head.askedAt,
        doneAt: Infinity,
      },
    }
  }

  private happen({ at, head, what }: Event): void {
    if (what === 'worked') this.worked(head, at)
    if (what === 'back') {
      this.vendorDays.push(Math.round(calendarOf(at) - calendarOf(head.since)))
      head.step++
      head.since = at
    }
    if (what === 'answered') {
      this.answerDays.push(calendarOf(at) - calendarOf(head.askedAt ?? at))
      head.askedAt = null
    }
    if (head.askedAt === null) this.goOn(head, at)
  }

  private worked(head: Head, at: number): void {
    const station = this.route[head.step] ?? 0
    this.past.push({ step: head.step, readyAt: head.since, freeAt: this.freeAt[station] ?? 0, doneAt: at })
    this.freeAt[station] = at
    this.busy[station] = null
    head.step++
    head.since = at
    this.start(station, at)
    // Something is found after one step in twenty-five: the next one waits for the customer.
    if (this.luck.next() >= 0.04) return
    head.askedAt = at
    head.waitingFor = 'answer'
    this.plan({ at: openOf(calendarOf(at) + this.luck.logNormal(1.5, 0.7)), head, what: 'answered' })
  }

  private goOn(head: Head, at: number): void {
    const station = this.route[head.step]
    if (station === undefined) {
      head.doneAt = at
      head.waitingFor = 'gone'
    } else if (station === null) {
      head.waitingFor = 'vendor'
      const days = this.luck.logNormal(this.habits.vendorDays, 0.4)
      this.plan({ at: openOf(Math.ceil(calendarOf(at) + days)), head, what: 'back' })
    } else {
      head.waitingFor = 'bench'
      this.queues[station]?.push(head)
      this.start(station, at)
    }
  }

  private start(station: number, at: number): void {
    if (this.busy[station]) return
    const head = this.queues[station]?.sort((a, b) => a.promise - b.promise).shift()
    if (!head) return
    this.busy[station] = head
    head.waitingFor = 'work'
    this.plan({ at: at + this.luck.logNormal(this.habits.works[station] ?? 0, 0.6), head, what: 'worked' })
  }

  private plan(event: Event): void {
    this.events.splice(this.events.findLastIndex((one) => one.at <= event.at) + 1, 0, event)
  }
}

type Habits = { readonly works: readonly number[]; readonly gapDays: number; readonly vendorDays: number }

/** One shop, from its number alone: how loaded it is, how long its benches take and how long its vendor. */
export function inventShop(number: number, headCount = 130): InventedShop {
  const luck = chance(number * 7919 + 13)
  for (let turn = 0; turn < 5; turn++) luck.next()
  const route = [0, 1, luck.next() < 0.7 ? null : 2, 2, 3, 1, 0]
  const works = Array.from({ length: 4 }, () => luck.between(0.1, 0.6))
  const loads = works.map((work, station) => work * route.filter((at) => at === station).length)
  const load = luck.between(0.5, 0.85)
  const play = new Play(
    luck,
    route,
    { works, gapDays: Math.max(...loads) / load, vendorDays: luck.between(4, 9) },
    headCount,
  )
  return play.run(play.heads[Math.floor(headCount * 0.75)]?.since ?? 0)
}
