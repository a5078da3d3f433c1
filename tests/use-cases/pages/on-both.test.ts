import { expect, it, vi } from 'vitest'
import { stations } from '@/lib/core/route/step-ids'
import { seeBackRoom } from '@/lib/use-cases/back-room/see-back-room'
import { seeTrail } from '@/lib/use-cases/back-room/see-trail'
import { seeCounter } from '@/lib/use-cases/counter/see-counter'
import { findAnything } from '@/lib/use-cases/find/find-anything'
import { openHold } from '@/lib/use-cases/holds/open-hold'
import { seeJob } from '@/lib/use-cases/jobs/see-job'
import { seeAway } from '@/lib/use-cases/outside/see-away'
import { printLabelsOfTags } from '@/lib/use-cases/papers/print-labels'
import { seeQueue } from '@/lib/use-cases/stations/see-queue'
import { seeStations } from '@/lib/use-cases/stations/see-stations'
import { describeOnBoth } from '@/tests/setup/database'
import { listPages } from './pages'
import { at, book, counter, head, monday, openShop, owner } from '../jobs/counter-shop'

/** Steps that can be worked on at each station, as its queue, the stations page and the Back room count them. */
async function counts() {
  const queues: Record<string, number> = {}
  for (const station of stations) {
    const { ready, started } = await seeQueue(counter, station)
    if (ready.length + started.length > 0) queues[station] = ready.length + started.length
  }
  const { loads } = await seeBackRoom(owner, monday)
  const backRoom = Object.fromEntries(
    loads.flatMap(({ station, ready, started }) => (ready + started === 0 ? [] : [[station, ready + started]])),
  )
  return { queues, stations: await seeStations(counter), backRoom }
}

const ofAll = (of: Readonly<Record<string, number>>) => Object.values(of).reduce((sum, count) => sum + count, 0)

describeOnBoth('queue, counter and Away', (open) => {
  it('count a step that can be worked on alike, and none of a head that is held or on order', async () => {
    await openShop(await open())
    const { heads } = await book()
    const before = await counts()
    expect(before.stations).toEqual(before.queues)
    expect(before.backRoom).toEqual(before.queues)
    expect(ofAll(before.queues)).toBeGreaterThan(1)

    const visitId = heads[0]?.visitId ?? ''
    await openHold(owner, { visitId, stepId: null, reason: 'bent stud' }, at(monday))
    const bought = await book({ heads: [head({ source: 'bought' })], promiseOn: '2026-03-03' })
    const after = await counts()
    expect(after.stations).toEqual(after.queues)
    expect(after.backRoom).toEqual(after.queues)
    expect(ofAll(after.queues)).toBe(ofAll(before.queues) / 2)

    const queues = await Promise.all(stations.map((station) => seeQueue(counter, station)))
    const shown = (list: 'ready' | 'later') =>
      new Set(queues.flatMap((queue) => queue[list].map((line) => line.visitId)))
    expect(shown('ready')).toEqual(new Set([heads[1]?.visitId]))
    expect(shown('later')).toContain(visitId)
    expect(
      queues.flatMap(({ ready }) => ready).every(({ marks }) => marks.some(({ code }) => code === 'mate-held')),
    ).toBe(true)

    const { jobs, atRisk } = await seeCounter(counter, { now: monday })
    expect(jobs.map(({ number, heads: listed }) => [number, listed.length])).toContainEqual([bought.number, 1])
    expect(atRisk.map(({ number }) => number)).toContain(bought.number)
    const away = await seeAway(counter, monday)
    expect(away.toOrder.map(({ headId }) => headId)).toEqual(bought.heads.map(({ headId }) => headId))
  })

  it('and every other page answer', async () => {
    vi.stubEnv('NEXTAUTH_SECRET', 'only for these tests, long enough')
    await openShop(await open())
    const { number, heads } = await book()
    const bought = await book({ heads: [head({ source: 'bought' })] })
    const tags = heads.map(({ tag }) => tag)
    const pages = {
      ...listPages(owner, monday),
      'labels of tags': () => printLabelsOfTags(owner, { first: null, tags }, monday),
    }
    for (const [name, look] of Object.entries(pages)) {
      expect({ name, seen: typeof (await look()) }).toEqual({ name, seen: 'object' })
    }
    const job = await seeJob(owner, { number, now: monday })
    expect(job.heads.map(({ tag }) => tag)).toEqual(tags)
    const { supply } = await seeJob(owner, { number: bought.number, now: monday })
    expect(supply.toOrder).toEqual(bought.heads.map(({ tag }) => tag))
    const found = await findAnything(owner, { q: heads[0]?.tag ?? '' })
    expect(found.hits[0]).toMatchObject({ headId: heads[0]?.headId, jobNumber: number })
    const trail = await seeTrail(owner, { find: number, before: null })
    expect(trail.lines.map(({ sentence }) => sentence).join(' ')).toContain('Booked')
  })
})
