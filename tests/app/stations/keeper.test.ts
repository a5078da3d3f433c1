import 'fake-indexeddb/auto'
import { beforeEach, describe, expect, it } from 'vitest'
import { StationKeeper, stepPlace, type Got } from '@/app/(staff)/stations/_app/keeper'
import { openStore, type Store } from '@/app/_components/outbox/store'
import { keyOf } from '@/lib/core/route/keys'
import type { FirstQueue } from '@/lib/web/station-view'

/** A person, and the build that drew the page. */
const ivo = 'p-ivo b1'
const key = keyOf('crack')
const place = (visitId: string) => stepPlace(visitId, key)
const line = (visitId: string) => ({ visitId, step: key })
const answer = (words: string) => ({ is: 'on-route', screen: words })

/** A station as the server tells it: so many heads ready, the steps it tells with them. */
const view = (newest: number, ready: readonly string[], told: Readonly<Record<string, string>>): Got => ({
  is: 'ok',
  body: {
    newest,
    at: '2026-03-02T14:00:00.000Z',
    build: 'b1',
    queue: { ready: ready.map(line), started: [], today: [], later: [], more: false },
    steps: Object.entries(told).map(([visitId, words]) => ({ visitId, key, answer: answer(words) })),
  },
})

let store: Store
let place_ = 0
beforeEach(async () => {
  store = await openStore(`keeper-${(place_ += 1)}`)
})

/** A keeper that is answered in turn; asks are noted. */
function keeperOf(answers: Got[], owner = ivo, first: FirstQueue | null = null) {
  const asked: string[] = []
  const ask = async (address: string): Promise<Got> => {
    asked.push(address)
    return answers.shift() ?? { is: 'away' }
  }
  return { asked, keeper: new StationKeeper({ store: Promise.resolve(store), owner, build: 'b1', ask, first }) }
}

describe('what a tablet knows of its station', () => {
  it('is what the server says, and asked for again only from there on', async () => {
    const { keeper, asked } = keeperOf([
      view(5, ['v1', 'v2'], { v1: 'one', v2: 'two' }),
      view(7, ['v1', 'v2'], { v1: 'new' }),
    ])
    await keeper.open('wash')
    await keeper.refresh()
    expect(asked).toEqual(['/api/stations/wash', '/api/stations/wash?since=5'])
    expect(keeper.snapshot().newest).toBe(7)
    expect(keeper.snapshot().steps.get(place('v1'))).toEqual(answer('new'))
    expect(keeper.snapshot().steps.get(place('v2')), 'no change touched it').toEqual(answer('two'))
  })

  it('is shown from what is kept while the server does not answer, to the person and the build it was told to', async () => {
    await keeperOf([view(5, ['v1'], { v1: 'one' })]).keeper.open('wash')
    const { keeper } = keeperOf([])
    await keeper.open('wash')
    expect(keeper.snapshot()).toMatchObject({ away: true, newest: 5 })
    expect(keeper.snapshot().steps.get(place('v1'))).toEqual(answer('one'))
    for (const owner of ['p-greta b1', 'p-ivo b2']) {
      const { keeper: others } = keeperOf([], owner)
      await others.open('wash')
      expect(others.snapshot(), owner).toMatchObject({ queue: null, away: true })
      expect(others.snapshot().steps.size, owner).toBe(0)
    }
  })

  it('is forgotten step by step as heads leave the station, and whole on sign-out', async () => {
    const { keeper } = keeperOf([view(5, ['v1', 'v2'], { v1: 'one', v2: 'two' }), view(6, ['v2'], {})])
    await keeper.open('wash')
    expect(await store.screens('wash', ivo)).toHaveLength(2)
    await keeper.refresh()
    expect((await store.screens('wash', ivo)).map(({ id }) => id)).toEqual([place('v2')])
    await store.forgetStations()
    expect(await store.station('wash', ivo)).toBeNull()
    expect(await store.screens('wash', ivo)).toEqual([])
  })

  it('leaves out a step that was told to somebody else', async () => {
    await keeperOf([view(5, ['v1'], { v1: 'one' })]).keeper.open('wash')
    await store.keepScreen({ id: place('v9'), station: 'wash', owner: 'p-greta b1', at: '', body: answer('hers') })
    const { keeper } = keeperOf([])
    await keeper.open('wash')
    expect([...keeper.snapshot().steps.keys()]).toEqual([place('v1')])
  })

  it('keeps a step that the server told while what is kept was read', async () => {
    await keeperOf([view(5, ['v1'], { v1: 'old' })]).keeper.open('wash')
    const { keeper } = keeperOf([
      { is: 'ok', body: { newest: 9, at: '2026-03-02T15:00:00.000Z', build: 'b1', answer: answer('new') } },
    ])
    const opening = keeper.open('wash')
    await keeper.openStep('wash', 'v1', key)
    await opening
    expect(keeper.snapshot().steps.get(place('v1'))).toEqual(answer('new'))
  })

  it('is asked for once more when something changed while it was told', async () => {
    let answers = 0
    const asked: string[] = []
    const keeper = new StationKeeper({
      store: Promise.resolve(null),
      owner: ivo,
      build: 'b1',
      ask: async (address) => {
        asked.push(address)
        await new Promise((resolve) => setTimeout(resolve, 5))
        return view((answers += 1), [], {})
      },
    })
    const first = keeper.open('wash')
    await new Promise((resolve) => setTimeout(resolve, 1))
    await Promise.all([first, keeper.refresh(), keeper.refresh(), keeper.refresh()])
    expect(asked).toEqual(['/api/stations/wash', '/api/stations/wash?since=1'])
  })

  it('stays while another build answers, whose answers may have another shape, and that build is told', async () => {
    const body = { newest: 9, at: '2026-03-02T15:00:00.000Z', build: 'b2', answer: { is: 'unheard of' } }
    const other: Got = { is: 'ok', body: { ...body, queue: 'unheard of', steps: 'unheard of' } }
    const { keeper } = keeperOf([view(5, ['v1'], { v1: 'one' }), other, { is: 'ok', body }])
    await keeper.open('wash')
    const { queue, steps } = keeper.snapshot()
    await keeper.refresh()
    expect(keeper.snapshot()).toMatchObject({ build: 'b2', newest: 5, away: false })
    await keeper.openStep('wash', 'v1', key)
    expect(keeper.snapshot().queue).toBe(queue)
    expect(keeper.snapshot().steps).toBe(steps)
    expect((await store.station('wash', ivo))?.newest).toBe(5)
  })

  it('says why a step cannot be shown, and that nobody is signed in', async () => {
    const refusal = { code: 'not-found', message: 'Head not found.' } as const
    const { keeper } = keeperOf([view(5, [], {}), { is: 'refused', refusal }, { is: 'signed-out' }])
    await keeper.open('wash')
    await keeper.openStep('wash', 'v9', key)
    expect(keeper.snapshot().refused.get(place('v9'))).toEqual(refusal)
    await keeper.refresh()
    expect(keeper.snapshot()).toMatchObject({ signedOut: true, away: false })
  })
})

describe('a queue that came with the page', () => {
  /** At the wash: so many heads ready, as the page had it. */
  const came = (newest: number, ready: readonly string[]) => {
    const { queue } = (view(newest, ready, {}) as { body: Pick<FirstQueue, 'queue'> }).body
    return { station: 'wash', newest, at: '2026-03-02T15:00:00.000Z', queue } as FirstQueue
  }
  const readyOf = (keeper: StationKeeper) => keeper.snapshot().queue?.ready.map(({ visitId }) => visitId)

  it('is there at once, and its steps are asked for', async () => {
    const { keeper, asked } = keeperOf([view(5, ['v1'], { v1: 'one' })], ivo, came(5, ['v1']))
    expect(readyOf(keeper)).toEqual(['v1'])
    await keeper.open('wash')
    expect(asked).toEqual(['/api/stations/wash'])
    expect(keeper.snapshot().steps.get(place('v1'))).toEqual(answer('one'))
  })

  it('stays the very same while the server says the same of it, so that nothing is drawn anew', async () => {
    const { keeper } = keeperOf([view(6, ['v1'], { v1: 'one' }), view(7, ['v1', 'v2'], {})], ivo, came(5, ['v1']))
    const { queue } = keeper.snapshot()
    await keeper.open('wash')
    expect(keeper.snapshot()).toMatchObject({ newest: 6 })
    expect(keeper.snapshot().queue).toBe(queue)
    await keeper.refresh()
    expect(readyOf(keeper)).toEqual(['v1', 'v2'])
  })

  it('stays before an older one that is kept here, whose steps are known all the same', async () => {
    await keeperOf([view(5, ['v1', 'v2'], { v1: 'one', v2: 'two' })]).keeper.open('wash')
    const { keeper, asked } = keeperOf([], ivo, came(8, ['v2']))
    const shown: unknown[] = []
    keeper.subscribe(() => shown.push(readyOf(keeper)))
    await keeper.open('wash')
    expect(shown.length).toBeGreaterThan(0)
    for (const ready of shown) expect(ready).toEqual(['v2'])
    expect(keeper.snapshot().steps.get(place('v2'))).toEqual(answer('two'))
    expect(asked, 'what changed since the steps were told').toEqual(['/api/stations/wash?since=5'])
  })

  it('is not shown at another station', async () => {
    const { keeper, asked } = keeperOf([view(6, ['v3'], {})], ivo, came(5, ['v1']))
    const shown: unknown[] = []
    keeper.subscribe(() => shown.push(readyOf(keeper)))
    await keeper.open('deck-mill')
    expect(shown).not.toContainEqual(['v1'])
    expect(readyOf(keeper)).toEqual(['v3'])
    expect(asked).toEqual(['/api/stations/deck-mill'])
  })
})

describe('eight hours at a station', () => {
  it('with 300 changes: what is known does not grow', async () => {
    const heads = Array.from({ length: 30 }, (_, at) => `v${at}`)
    let newest = 0
    const keeper = new StationKeeper({
      store: Promise.resolve(store),
      owner: ivo,
      build: 'b1',
      ask: async () => {
        newest += 1
        // One head leaves, another comes: there are never more than 30.
        const ready = heads.map((_, at) => `v${at + newest}`)
        return view(newest, ready, { [ready.at(-1) ?? '']: 'x', [ready[0] ?? '']: 'y' })
      },
    })
    await keeper.open('wash')
    for (let change = 0; change < 300; change++) await keeper.refresh()
    expect(keeper.snapshot().steps.size).toBeLessThanOrEqual(31)
    expect(await store.screens('wash', ivo)).toSatisfy((kept: unknown[]) => kept.length <= 31)
  })
})
