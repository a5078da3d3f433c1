import { afterEach, describe, expect, it, vi } from 'vitest'
import type { KeptDeed } from '@/app/_components/outbox/kept'
import { postDeeds } from '@/app/_components/outbox/post'

const deed: KeptDeed = {
  id: '5b6f3a1e-0000-4000-8000-000000000001',
  seq: 7,
  kind: 'tick',
  version: 1,
  personId: 'p-ivo',
  takenAt: '2026-03-02T14:00:00.000Z',
  words: 'T-1: tick',
  input: { visitId: 'T-1' },
}

afterEach(() => vi.unstubAllGlobals())

const answering = (status: number, body: unknown) => {
  const fetched = vi.fn(async (_address: string, _init: RequestInit) => Response.json(body, { status }))
  vi.stubGlobal('fetch', fetched)
  return fetched
}

describe('a batch on its way', () => {
  it('holds what the server needs, and nothing that is for this device alone', async () => {
    const fetched = answering(200, { answers: [{ id: deed.id, state: 'done', value: null }], newest: 3 })
    expect(await postDeeds([deed])).toEqual({
      kind: 'answered',
      answers: [{ id: deed.id, state: 'done', value: null }],
    })
    const sent = JSON.parse(String(fetched.mock.calls[0]?.[1].body)) as { operations: object[] }
    expect(Object.keys(sent.operations[0] ?? {}).sort()).toEqual([
      ...['id', 'input', 'kind', 'personId', 'takenAt', 'version'],
    ])
  })

  it.each([
    [401, 'signed-out'],
    [408, 'later'],
    [429, 'later'],
    [500, 'later'],
    [503, 'later'],
  ])('that is answered with %i is %s', async (status, kind) => {
    answering(status, {})
    expect(await postDeeds([deed])).toEqual({ kind })
  })

  it('that cannot be read is said to be so', async () => {
    const refusal = { code: 'invalid', message: 'This could not be read.' }
    answering(422, { refusal })
    expect(await postDeeds([deed])).toEqual({ kind: 'unread', refusal })
  })

  it('that never arrives is sent later', async () => {
    vi.stubGlobal('fetch', async () => Promise.reject(new TypeError('network')))
    expect(await postDeeds([deed])).toEqual({ kind: 'later' })
  })
})
