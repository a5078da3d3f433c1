import 'fake-indexeddb/auto'
import fc from 'fast-check'
import { randomUUID } from 'node:crypto'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { Sender, type OutboxState, type PostAnswer } from '@/app/_components/outbox/sender'
import { nextBatch, pauseMs, settle } from '@/app/_components/outbox/rules'
import type { KeptDeed, NewDeed } from '@/app/_components/outbox/kept'
import { openStore, type Store } from '@/app/_components/outbox/store'
import type { OperationAnswer } from '@/lib/schemas/operation-answer'

const ivo = 'p-ivo'
const step = { stepId: 'chambers', occurrence: '', orderId: null }

const deed = (over: Partial<NewDeed> & { visitId?: string; seen?: number } = {}): NewDeed => {
  const { visitId = 'T-1', seen = 5, ...rest } = over
  return {
    id: randomUUID(),
    kind: 'tick',
    version: 1,
    personId: ivo,
    takenAt: '2026-03-02T14:00:00.000Z',
    words: 'Tick chambers',
    input: { visitId, step, seen },
    ...rest,
  }
}

/** A record that does each id once, as the server's does. `before`: what happens to one sending. */
class Shop {
  readonly done: KeptDeed[] = []
  calls = 0
  constructor(
    private readonly happens: (call: number) => 'answers' | 'never arrives' | 'answer is lost' | 'signed out',
  ) {}
  readonly post = async (operations: readonly KeptDeed[]): Promise<PostAnswer> => {
    const what = this.happens((this.calls += 1))
    if (what === 'never arrives') throw new TypeError('network')
    if (what === 'signed out') return { kind: 'signed-out' }
    const answers = operations.map((operation): OperationAnswer => {
      const { id, input } = operation
      if (input.refuse === true) {
        return { id, state: 'refused', refusal: { code: 'conflict', message: 'Somebody else was first.' } }
      }
      if (!this.done.some((one) => one.id === id)) this.done.push(operation)
      return { id, state: 'done', value: { seen: 100 + this.done.findIndex((one) => one.id === id) } }
    })
    if (what === 'answer is lost') throw new TypeError('network')
    return { kind: 'answered', answers }
  }
}

let store: Store
let place = 0
beforeEach(async () => {
  store = await openStore(`test-${(place += 1)}`)
})
afterEach(() => store.close())

/** A sender whose pauses are over when the test says so. */
function sending(shop: Pick<Shop, 'post'>, personId = ivo) {
  let state: OutboxState = { deeds: [], sending: false, away: false, signedOut: false }
  const timers: (() => void)[] = []
  const pauses: number[] = []
  const sender = new Sender({
    store,
    personId,
    post: shop.post,
    onState: (now) => (state = now),
    later: (work, ms) => {
      pauses.push(ms)
      timers.push(work)
      return () => void timers.splice(timers.indexOf(work), 1)
    },
  })
  return {
    sender,
    pauses,
    state: () => state,
    /** All that is under way has come to rest. */
    rest: async () => {
      do await new Promise((resolve) => setTimeout(resolve, 5))
      while (state.sending)
    },
    pauseIsOver: () => timers.splice(0).forEach((work) => work()),
  }
}

const words = (deeds: readonly { input: { visitId: string } }[]) => deeds.map(({ input }) => input.visitId)

describe('what was done here', () => {
  it('is sent in order and then no longer kept', async () => {
    const shop = new Shop(() => 'answers')
    const { sender, rest, state } = sending(shop)
    for (const visitId of ['T-1', 'T-2', 'T-1']) await sender.add(deed({ visitId }))
    await rest()
    expect(words(shop.done)).toEqual(['T-1', 'T-2', 'T-1'])
    expect(state().deeds).toEqual([])
    expect(await store.deeds()).toEqual([])
  })

  it('is kept before the network is tried, and sent after growing pauses once it is back', async () => {
    const shop = new Shop((call) => (call <= 3 ? 'never arrives' : 'answers'))
    const { sender, rest, state, pauses, pauseIsOver } = sending(shop)
    await sender.add(deed())
    expect(await store.deeds()).toHaveLength(1)
    for (const failures of [1, 2, 3]) {
      await rest()
      expect(state()).toMatchObject({ away: true, sending: false })
      expect(pauses).toHaveLength(failures)
      pauseIsOver()
    }
    await rest()
    expect(pauses).toEqual([1000, 2000, 4000])
    expect(state()).toMatchObject({ away: false, deeds: [] })
    expect(shop.done).toHaveLength(1)
  })

  it('is done once when the answer was lost', async () => {
    const shop = new Shop((call) => (call === 1 ? 'answer is lost' : 'answers'))
    const { sender, rest, pauseIsOver } = sending(shop)
    await sender.add(deed())
    await rest()
    pauseIsOver()
    await rest()
    expect(shop.calls).toBe(2)
    expect(shop.done).toHaveLength(1)
    expect(await store.deeds()).toEqual([])
  })

  it('waits for its person: somebody else does not send it, nor does anybody who is signed out', async () => {
    const shop = new Shop((call) => (call === 1 ? 'signed out' : 'answers'))
    const { sender, rest, state } = sending(shop)
    await sender.add(deed({ personId: 'p-greta', visitId: 'T-9' }))
    await sender.add(deed())
    await rest()
    expect(state()).toMatchObject({ signedOut: true })
    await sender.add(deed({ visitId: 'T-2' }))
    await rest()
    expect(shop.calls).toBe(1)
    await sender.wake()
    await rest()
    expect(words(shop.done)).toEqual(['T-1', 'T-2'])
    expect(words(await store.deeds())).toEqual(['T-9'])
  })

  it('stays, set aside with the reason, when it is refused; the rest goes on', async () => {
    const shop = new Shop(() => 'answers')
    const { sender, rest, state } = sending(shop)
    await sender.add(deed({ input: { visitId: 'T-1', step, seen: 5, refuse: true } }))
    await sender.add(deed({ visitId: 'T-2' }))
    await rest()
    expect(words(shop.done)).toEqual(['T-2'])
    const [left] = state().deeds
    expect(left?.refusal).toMatchObject({ code: 'conflict' })
    const calls = shop.calls
    await sender.wake()
    await rest()
    expect(shop.calls).toBe(calls)
    await sender.drop(left?.seq ?? 0)
    expect(await store.deeds()).toEqual([])
  })

  it('that cannot be read does not hold up the rest', async () => {
    const bad = deed({ visitId: 'T-bad' })
    const shop = new Shop(() => 'answers')
    const post: Shop['post'] = async (operations) =>
      operations.some(({ id }) => id === bad.id)
        ? { kind: 'unread', refusal: { code: 'invalid', message: 'This could not be read.' } }
        : shop.post(operations)
    const { sender, rest, state } = sending({ post })
    await store.addDeed(deed({ visitId: 'T-1' }))
    await store.addDeed(bad)
    await store.addDeed(deed({ visitId: 'T-2' }))
    await sender.wake()
    await rest()
    expect(words(shop.done)).toEqual(['T-1', 'T-2'])
    expect(state().deeds).toMatchObject([{ id: bad.id, refusal: { code: 'invalid' } }])
  })

  it('is kept once under one id, and numbers go on after a restart', async () => {
    const once = deed()
    await store.addDeed(once)
    await store.addDeed(once)
    const [first] = await store.deeds()
    expect(await store.deeds()).toHaveLength(1)
    await store.settleDeeds({ gone: [first?.seq ?? 0], changed: [] })
    await store.addDeed(deed())
    expect((await store.deeds())[0]?.seq).toBeGreaterThan(first?.seq ?? Infinity)
  })
})

describe('whatever the network does', () => {
  it('each deed is done once, those of a head in order, and none is left or lost', { timeout: 60_000 }, async () => {
    const weather = fc.array(fc.constantFrom('answers', 'never arrives', 'answer is lost', 'signed out'), {
      maxLength: 12,
    })
    const heads = fc.array(fc.constantFrom('T-1', 'T-2', 'T-3'), { minLength: 1, maxLength: 8 })
    await fc.assert(
      fc.asyncProperty(weather, heads, async (happens, visits) => {
        const shop = new Shop((call) => (happens[call - 1] as 'answers' | undefined) ?? 'answers')
        const { sender, rest, pauseIsOver } = sending(shop)
        const deeds = visits.map((visitId) => deed({ visitId }))
        for (const each of deeds) await sender.add(each)
        for (let tries = 0; tries <= happens.length + 1 && (await store.deeds()).length > 0; tries += 1) {
          await rest()
          pauseIsOver()
          await sender.wake()
        }
        await rest()
        expect(await store.deeds()).toEqual([])
        expect(shop.done.map(({ id }) => id)).toEqual(deeds.map(({ id }) => id))
      }),
      { numRuns: 40 },
    )
  })
})

describe('the rules of sending', () => {
  const kept = (seq: number, over: Parameters<typeof deed>[0] = {}): KeptDeed => ({ ...deed(over), seq })

  it('takes the oldest of one person, so many at once', () => {
    const all = [kept(3), kept(1), { ...kept(2), personId: 'p-greta' }]
    const batch = nextBatch(all, ivo)
    expect(batch.map(({ id }) => id)).toEqual([all[1]?.id, all[0]?.id])
    expect(
      nextBatch(
        Array.from({ length: 120 }, (_, at) => kept(at)),
        ivo,
      ),
    ).toHaveLength(50)
  })

  it('goes as far as the next photo, which goes up alone and in its turn', () => {
    const photo = { ...kept(2), kind: 'photo' as const }
    const [before, after] = [kept(1), kept(3)]
    expect(nextBatch([before, photo, after], ivo)).toEqual([before])
    expect(nextBatch([photo, after], ivo)).toEqual([photo])
    expect(nextBatch([after], ivo)).toEqual([after])
  })

  it('gives later deeds of the step the sight of what was done, and those of another step not', () => {
    const other = { visitId: 'T-1', step: { ...step, stepId: 'thickness' }, seen: 5 }
    const all = [kept(1), kept(2), kept(3, { input: other }), kept(4, { visitId: 'T-2' })]
    const { gone, changed } = settle(all, [{ id: all[0]?.id ?? '', state: 'done', value: { seen: 9 } }])
    expect(gone).toEqual([1])
    expect(changed).toMatchObject([{ seq: 2, input: { seen: 9 } }])
  })

  it('waits 1, 2, 4 … seconds and never longer than a minute', () => {
    expect([1, 2, 3, 6, 7, 8, 50].map(pauseMs)).toEqual([1000, 2000, 4000, 32_000, 60_000, 60_000, 60_000])
  })
})
