import { beforeAll, describe, expect, it, vi } from 'vitest'
import { keyOf } from '@/lib/core/route/keys'
import { addInstrumentSchema } from '@/lib/schemas/shop'
import { startStepSchema } from '@/lib/schemas/visit'
import { addInstrument } from '@/lib/use-cases/shop/add-instrument'
import { startStep } from '@/lib/use-cases/visits/start-step'
import { newestChange } from '@/lib/use-cases/shop/newest-change'
import { firstQueue, stationView, stepView } from '@/lib/web/station-view'
import { testDatabase } from '@/tests/setup/database'
import { at, book, machinist, monday, openShop, owner } from '../use-cases/jobs/counter-shop'

vi.setConfig({ testTimeout: 60_000, hookTimeout: 60_000 })

const checkIn = keyOf('check-in')
/** Two jobs of a pair each, all four heads at the front desk. */
let first: readonly string[] = []
let second: readonly string[] = []

beforeAll(async () => {
  await openShop(await testDatabase())
  first = (await book()).heads.map(({ visitId }) => visitId)
  second = (await book()).heads.map(({ visitId }) => visitId)
})

const seen = (since: number | null) => stationView(machinist, 'front-desk', since, monday)
const told = async (since: number | null) => (await seen(since)).steps.map(({ visitId }) => visitId).sort()
const start = (visitId: string) =>
  startStep(machinist, startStepSchema.parse({ visitId, step: checkIn, seen: 0 }), at(monday))

describe('what a tablet is told of its station', () => {
  it('is its queue and the screen of each step that is ready there, the same after a way as JSON', async () => {
    const view = await seen(null)
    expect(view.queue.ready.map(({ visitId }) => visitId).sort()).toEqual([...first, ...second].sort())
    expect(view.steps.map(({ visitId }) => visitId).sort()).toEqual([...first, ...second].sort())
    expect(view.newest).toBe(await newestChange())
    expect(JSON.parse(JSON.stringify(view))).toEqual(view)
  })

  it('is the queue that stands in the page before it', async () => {
    const { queue, newest } = await seen(null)
    expect(await firstQueue(machinist, 'front-desk', monday)).toMatchObject({ station: 'front-desk', queue, newest })
  })

  it('is, of the steps, nothing where nothing changed since', async () => {
    expect(await told(await newestChange())).toEqual([])
  })

  it('is a head that changed, and its mate: they are held against each other', async () => {
    const before = await newestChange()
    await start(first[0] ?? '')
    expect(await told(before)).toEqual([...first].sort())
    expect((await seen(before)).queue.started.map(({ visitId }) => visitId)).toEqual([first[0]])
  })

  it('is both heads of a job of which something changed', async () => {
    const before = await newestChange()
    await book()
    expect(await told(before)).toHaveLength(2)
  })

  it('is every step after a change that all heads share', async () => {
    const before = await newestChange()
    const gauge = addInstrumentSchema.parse({ name: 'Burette 2', kind: 'burette', lastCheckedOn: '', dueOn: '' })
    await addInstrument(owner, gauge, at(monday))
    expect(await told(before)).toHaveLength(6)
  })

  it('is one step, wherever it stands on the route, or that it is not there', async () => {
    const visitId = second[0] ?? ''
    const ask = (ref: 'check-in' | 'straighten') =>
      stepView(machinist, 'front-desk', { visitId, key: keyOf(ref) }, monday)
    expect((await ask('check-in')).answer).toMatchObject({ is: 'on-route', screen: { visitId } })
    expect((await ask('straighten')).answer).toMatchObject({ is: 'left', left: { label: 'Straighten' } })
  })
})
