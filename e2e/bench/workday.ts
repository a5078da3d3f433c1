import { randomUUID } from 'node:crypto'
import { setTimeout as pause } from 'node:timers/promises'
import { stationLabels } from '../../lib/core/route/stations'

const tablets = 20
const machinists = 6
const counterPeople = 4
/** As a station's page asks. */
const asksEveryMs = 2_000

/** What the people of the day work on. */
export type Workplace = {
  /** Where the next question goes: with several processes, to the proxy before them. */
  readonly url: string
  /** Ticks with readings that stand ready, each of another head. */
  readonly deeds: readonly Deed[]
  /** Addresses that the counter opens. */
  readonly pages: readonly string[]
  readonly cookies: { readonly tablet: string; readonly machinist: string; readonly counter: string }
}

export type Deed = { readonly kind: string; readonly personId: string; readonly input: { readonly visitId: string } }

export type Workday = {
  /** Milliseconds of every answer, by what was asked. */
  readonly times: Readonly<Record<string, readonly number[]>>
  /** Ids of the deeds that were acknowledged, ticks and moves. */
  readonly acknowledged: { readonly ticks: readonly string[]; readonly moves: readonly string[] }
  /** Answers that were no 200, in words. */
  readonly failed: readonly string[]
}

class Watch {
  readonly times: Record<string, number[]> = {}
  readonly failed: string[] = []

  /** The text of an answer; '' where it was none. */
  async ask(what: string, url: string, cookie: string, body?: string): Promise<string> {
    const began = performance.now()
    try {
      const json = { 'content-type': 'application/json', origin: new URL(url).origin }
      const sent = body === undefined ? { headers: { cookie } } : { method: 'POST', headers: { cookie, ...json }, body }
      const answer = await fetch(url, { ...sent, redirect: 'manual' })
      const text = await answer.text()
      ;(this.times[what] ??= []).push(performance.now() - began)
      if (answer.status === 200) return text
      this.failed.push(`${what}: ${answer.status} ${text.slice(0, 200)}`)
    } catch (error) {
      this.failed.push(`${what}: ${String(error)}`)
    }
    return ''
  }
}

const between = (leastMs: number, mostMs: number): number => leastMs + Math.random() * (mostMs - leastMs)

/** Tablets are switched on one after the other. */
const switchedOnWithinMs = 60_000

/** A tablet that stands at its station and shows what happens in the shop. */
async function tablet(place: number, { url, cookies }: Workplace, watch: Watch, until: number): Promise<void> {
  const names = Object.keys(stationLabels)
  const station = `${url}/api/stations/${names[place % names.length] ?? ''}`
  const ask = async (what: string, address: string): Promise<{ readonly newest?: number }> =>
    JSON.parse((await watch.ask(what, address, cookies.tablet)) || '{}') as { newest?: number }
  await pause(between(0, Math.min(switchedOnWithinMs, (until - performance.now()) / 4)))
  let known = (await ask('station, whole', station)).newest ?? 0
  while (performance.now() < until) {
    const { newest = 0 } = await ask('anything new?', `${url}/api/changes`)
    if (newest > known) known = (await ask('station, what is new', `${station}?since=${known}`)).newest ?? known
    await pause(asksEveryMs)
  }
}

type Done = { readonly ticks: string[]; readonly moves: string[] }

/** A deed as the outbox sends it; every tenth is sent again, as after a lost answer. */
async function send(what: 'ticks' | 'moves', deed: object, { url, cookies }: Workplace, watch: Watch, done: Done) {
  const [id, at] = [randomUUID(), new Date().toISOString()]
  const body = JSON.stringify({ sentAt: at, operations: [{ version: 1, ...deed, id, takenAt: at }] })
  const name = what === 'ticks' ? 'tick with readings' : 'rack location'
  const text = await watch.ask(name, `${url}/api/operations`, cookies.machinist, body)
  if (!text.includes('"state":"done"')) return void watch.failed.push(`${name}: ${text.slice(0, 200)}`)
  done[what].push(id)
  if (Math.random() < 0.1) await watch.ask(`${name}, again`, `${url}/api/operations`, cookies.machinist, body)
}

/** A machinist: looks at the queue, ticks one head, puts it elsewhere. */
async function machinist(own: readonly Deed[], place: Workplace, watch: Watch, until: number, done: Done) {
  const shelf = new Map<string, string>()
  const everyMs = Math.max(1, until - performance.now()) / Math.max(1, own.length)
  // Nobody ticks at the same moment as the others.
  await pause(between(0, everyMs))
  for (const deed of own) {
    if (performance.now() > until) return
    const next = performance.now() + everyMs
    await watch.ask('queue page', `${place.url}/stations/measuring-bench`, place.cookies.machinist)
    await send('ticks', deed, place, watch, done)
    const { visitId } = deed.input
    while (performance.now() < Math.min(next, until)) {
      const [was, rackPlace] = [shelf.get(visitId) ?? '', `R-${Math.floor(Math.random() * 1e6)}`]
      await send('moves', { ...deed, kind: 'rack-place', input: { visitId, rackPlace, was } }, place, watch, done)
      shelf.set(visitId, rackPlace)
      await pause(Math.min(between(10_000, 25_000), Math.max(0, Math.min(next, until) - performance.now())))
    }
  }
}

/** Somebody at the counter: one page after the other. */
async function counter({ url, pages, cookies }: Workplace, watch: Watch, until: number): Promise<void> {
  while (performance.now() < until) {
    const page = pages[Math.floor(Math.random() * pages.length)] ?? '/counter'
    await watch.ask(
      `page ${page.replace(/[?].*/u, '').replace(/[-0-9a-f]{20,}|J?\d\d-\d+/u, '…')}`,
      `${url}${page}`,
      cookies.counter,
    )
    await pause(between(4_000, 12_000))
  }
}

/** 20 tablets follow and 10 people work, all at once, for so long. */
export async function workday(place: Workplace, forMs: number): Promise<Workday> {
  const watch = new Watch()
  const done: Done = { ticks: [], moves: [] }
  const until = performance.now() + forMs
  const share = (one: number) => place.deeds.filter((_, at) => at % machinists === one)
  await Promise.all([
    ...Array.from({ length: tablets }, (_, at) => tablet(at, place, watch, until)),
    ...Array.from({ length: machinists }, (_, at) => machinist(share(at), place, watch, until, done)),
    ...Array.from({ length: counterPeople }, () => counter(place, watch, until)),
  ])
  return { times: watch.times, acknowledged: done, failed: watch.failed }
}
