import { webcrypto } from 'node:crypto'
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest'
import { OperationIds } from '@/app/_components/form/operation-ids'

const idOf = async (ids: OperationIds, input: unknown, name?: string) => (await ids.callFor(input, name)).op

afterEach(() => vi.unstubAllGlobals())

describe('operation ids', () => {
  it('are version 4 UUIDs (RFC 9562: version nibble 4, variant bits 10)', async () => {
    const ids = await Promise.all(Array.from({ length: 200 }, (_, at) => idOf(new OperationIds(), at)))
    for (const id of ids) expect(id).toMatch(/^[0-9a-f]{8}-[0-9a-f]{4}-4[0-9a-f]{3}-[89ab][0-9a-f]{3}-[0-9a-f]{12}$/)
    expect(new Set(ids).size).toBe(200)
  })

  it('are had on plain HTTP, where the browser makes no UUIDs', async () => {
    vi.stubGlobal('crypto', {
      getRandomValues: (array: Uint8Array<ArrayBuffer>) => webcrypto.getRandomValues(array),
    })
    expect('randomUUID' in crypto).toBe(false)
    expect(await idOf(new OperationIds(), 'a')).toMatch(/^[0-9a-f-]{36}$/)
  })
})

describe('attempts at a change', () => {
  it('go out under the same id while the same content has no answer', async () => {
    const ids = new OperationIds()
    expect(await idOf(ids, { name: 'Ada' })).toBe(await idOf(ids, { name: 'Ada' }))
  })

  it('get a new id for other content', async () => {
    const ids = new OperationIds()
    expect(await idOf(ids, { name: 'Ada' })).not.toBe(await idOf(ids, { name: 'Adam' }))
  })

  it('get a new id for another deed with the same content', async () => {
    const ids = new OperationIds()
    expect(await idOf(ids, { name: 'Ada' }, 'start')).not.toBe(await idOf(ids, { name: 'Ada' }, 'tick'))
  })

  it('get a new id for the same content once there was an answer', async () => {
    const ids = new OperationIds()
    const first = await idOf(ids, { name: 'Ada' })
    ids.answered()
    expect(await idOf(ids, { name: 'Ada' })).not.toBe(first)
  })
})

describe('an attempt whose answer was lost', () => {
  const kept = new Map<string, string>()
  beforeEach(() => {
    kept.clear()
    vi.stubGlobal('localStorage', {
      getItem: (key: string) => kept.get(key) ?? null,
      setItem: (key: string, text: string) => void kept.set(key, text),
      removeItem: (key: string) => void kept.delete(key),
    })
  })
  const opened = () => {
    const ids = new OperationIds()
    ids.keepUnder('step 1')
    return ids
  }

  it('goes out again as it was after a reload, though the page has seen more by then', async () => {
    const first = await opened().callFor({ seen: 3, text: '64.2' }, 'record')
    expect(await opened().callFor({ seen: 4, text: '64.2' }, 'record')).toEqual(first)
  })

  it('gets a new id after a reload when the content was changed', async () => {
    const first = await opened().callFor({ seen: 3, text: '64.2' }, 'record')
    const second = await opened().callFor({ seen: 4, text: '64.3' }, 'record')
    expect(second.op).not.toBe(first.op)
    // What the first try did is not known here: the server is told what was seen before it.
    expect(second.input).toEqual({ seen: 3, text: '64.3' })
  })

  it('is told by what is sent next, which says what was seen before it', async () => {
    await opened().callFor({ seen: 3, text: '64.2' }, 'record')
    const next = opened()
    expect((await next.callFor({ seen: 4, text: '64.2' }, 'tick')).input).toEqual({ seen: 3, text: '64.2' })
    expect((await next.callFor({ seen: 5, text: '64.2' }, 'start')).input).toEqual({ seen: 3, text: '64.2' })
    next.answered()
    expect((await next.callFor({ seen: 5, text: '64.2' }, 'tick')).input).toEqual({ seen: 5, text: '64.2' })
  })

  it('is over after an answer, on the next page too', async () => {
    const ids = opened()
    const first = await ids.callFor({ seen: 3, text: '64.2' }, 'record')
    ids.answered()
    expect((await opened().callFor({ seen: 3, text: '64.2' }, 'record')).op).not.toBe(first.op)
  })

  it('of another shape than today’s is not taken up', async () => {
    await opened().callFor({ text: '64.2' }, 'record')
    const [key = '', text = ''] = [...kept][0] ?? []
    const { op } = JSON.parse(text) as { op: string }
    kept.set(key, text.replace('"shape":1', '"shape":0'))
    expect((await opened().callFor({ text: '64.2' }, 'record')).op).not.toBe(op)
  })
})
