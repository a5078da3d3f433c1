import 'fake-indexeddb/auto'
import { randomUUID } from 'node:crypto'
import { afterEach, describe, expect, it } from 'vitest'
import type { KeptDeed, NewDeed } from '@/app/_components/outbox/kept'
import { Outbox } from '@/app/_components/outbox/outbox'
import type { PostAnswer } from '@/app/_components/outbox/sender'
import { openStore } from '@/app/_components/outbox/store'

const ivo = 'p-ivo'
const deed = (): NewDeed => ({
  id: randomUUID(),
  kind: 'tick',
  version: 1,
  personId: ivo,
  takenAt: '2026-03-02T14:00:00.000Z',
  words: 'T-1: tick',
  input: { visitId: 'T-1' },
})

const conflict = { code: 'conflict', message: 'Somebody else was first.' } as const
const done = (deeds: readonly KeptDeed[]): PostAnswer => ({
  kind: 'answered',
  answers: deeds.map(({ id }) => ({ id, state: 'done', value: { ticked: true } })),
})

let place = 0
const open: Outbox[] = []
const outboxOf = (post: (deeds: readonly KeptDeed[]) => Promise<PostAnswer>, store = `outbox-${(place += 1)}`) => {
  const outbox = new Outbox(ivo, () => openStore(store), post)
  open.push(outbox)
  return outbox
}
afterEach(() => open.splice(0).forEach((outbox) => outbox.close()))

describe('what became of a deed', () => {
  it('is done, with what the server answered, and it is kept no longer', async () => {
    const outbox = outboxOf(async (deeds) => done(deeds))
    expect(await outbox.add(deed())).toEqual({ is: 'done', value: { ticked: true } })
    expect(outbox.snapshot()).toMatchObject({ deeds: [], late: 0 })
  })

  it('is refused: its person sees it at once, so it is not set aside as well', async () => {
    const outbox = outboxOf(async ([one]) => ({
      kind: 'answered',
      answers: [{ id: one?.id ?? '', state: 'refused', refusal: conflict }],
    }))
    expect(await outbox.add(deed())).toEqual({ is: 'refused', refusal: conflict })
    expect(outbox.snapshot().deeds).toEqual([])
  })

  it('is refused when it could not be read', async () => {
    const refusal = { code: 'invalid', message: 'This could not be read.' } as const
    const outbox = outboxOf(async () => ({ kind: 'unread', refusal }))
    expect(await outbox.add(deed())).toEqual({ is: 'refused', refusal })
  })

  it('is kept while the server is away, and while nobody is signed in', async () => {
    for (const kind of ['later', 'signed-out'] as const) {
      const outbox = outboxOf(async () => ({ kind }))
      expect(await outbox.add(deed())).toEqual({ is: 'kept' })
      expect(outbox.snapshot().unsent).toHaveLength(1)
    }
  })

  it('is not shown as done while its person waits, nor as set aside: the form is to show the refusal', async () => {
    const seen: object[] = []
    const outbox = outboxOf(async ([one]) => ({
      kind: 'answered',
      answers: [{ id: one?.id ?? '', state: 'refused', refusal: conflict }],
    }))
    outbox.subscribe(() => seen.push(outbox.snapshot()))
    await outbox.add(deed())
    expect(seen.length).toBeGreaterThan(2)
    for (const state of seen) expect(state).toMatchObject({ unsent: [], aside: [] })
  })

  it('that was kept and is refused later is set aside with the reason, and counts as late', async () => {
    let away = true
    const outbox = outboxOf(async ([one]) =>
      away
        ? { kind: 'later' }
        : { kind: 'answered', answers: [{ id: one?.id ?? '', state: 'refused', refusal: conflict }] },
    )
    expect(await outbox.add(deed())).toEqual({ is: 'kept' })
    away = false
    await outbox.wake()
    expect(outbox.snapshot()).toMatchObject({ deeds: [{ refusal: conflict }], late: 1 })
    await outbox.drop(outbox.snapshot().deeds[0]?.seq ?? 0)
    expect(outbox.snapshot().deeds).toEqual([])
  })

  it('cannot be kept here: it is not sent either', async () => {
    const sent: string[] = []
    const outbox = new Outbox(
      ivo,
      async () => ({
        ...(await openStore(`outbox-${(place += 1)}`)),
        addDeed: () => Promise.reject(new DOMException('full', 'QuotaExceededError')),
      }),
      async (deeds) => {
        sent.push(...deeds.map(({ id }) => id))
        return done(deeds)
      },
    )
    open.push(outbox)
    await expect(outbox.add(deed())).rejects.toThrow('full')
    expect(sent).toEqual([])
  })

  it('is sent all the same from a browser that keeps nothing, which says so', async () => {
    const outbox = new Outbox(
      ivo,
      () => Promise.reject(new Error('private window')),
      async (deeds) => done(deeds),
    )
    open.push(outbox)
    expect(await outbox.add(deed())).toMatchObject({ is: 'done' })
    expect(outbox.keeps).toBe(false)
  })
})

describe('what waits to be sent', () => {
  it('is the very same list while it holds the same deeds, so that nothing is drawn anew', async () => {
    const outbox = outboxOf(async (deeds) => done(deeds))
    const { unsent } = outbox.snapshot()
    let told = 0
    outbox.subscribe(() => (told += 1))
    await outbox.wake()
    await outbox.add(deed())
    expect(told).toBeGreaterThan(0)
    expect(outbox.snapshot().unsent).toBe(unsent)
  })
})

describe('two pages of one device', () => {
  it('send what is kept there; each deed goes through, whoever sends it', async () => {
    const seen = new Set<string>()
    const post = async (deeds: readonly KeptDeed[]) => {
      deeds.forEach(({ id }) => seen.add(id))
      return done(deeds)
    }
    const [one, two] = [outboxOf(post, 'shared'), outboxOf(post, 'shared')]
    const deeds = Array.from({ length: 10 }, deed)
    await Promise.all(deeds.map((each, at) => (at % 2 === 0 ? one : two).add(each)))
    await Promise.all([one.wake(), two.wake()])
    expect(seen.size).toBe(10)
    expect(await (await one.store)?.deeds()).toEqual([])
  })
})
