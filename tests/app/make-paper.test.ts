import { afterEach, describe, expect, it, vi } from 'vitest'
import { makePaper } from '@/app/_components/papers/make-paper'

afterEach(() => vi.unstubAllGlobals())

const answering = (answer: () => Promise<Response>) => vi.stubGlobal('fetch', vi.fn(answer))
const refused = (body: string, type: string, status: number) =>
  answering(async () => new Response(body, { status, headers: { 'content-type': type } }))

describe('a paper that is made before it is opened', () => {
  it('is there once all of it has come', async () => {
    answering(async () => new Response('%PDF-1.7', { headers: { 'content-type': 'application/pdf' } }))
    expect(await makePaper('/paper')).toEqual({ ok: true })
  })

  it('that is refused says why in the server’s own words', async () => {
    refused('Tag not found: T-9999.', 'text/plain; charset=utf-8', 404)
    expect(await makePaper('/paper')).toEqual({ ok: false, why: 'Tag not found: T-9999.' })
  })

  it('that something else answers for says so in words, and never as code', async () => {
    for (const [body, type] of [
      ['<html><h1>Bad gateway</h1></html>', 'text/html'],
      ['', 'text/plain'],
    ] as const) {
      refused(body, type, 502)
      const made = await makePaper('/paper')
      expect(made.ok || made.why).toMatch(/^The paper could not be made\. Try again/)
    }
  })

  it('without a network says so, whether it is gone before the answer or in the middle of it', async () => {
    answering(() => Promise.reject(new TypeError('fetch failed')))
    expect(await makePaper('/paper')).toMatchObject({
      ok: false,
      why: expect.stringContaining('does not answer') as string,
    })
    const broken = new ReadableStream({ pull: (stream) => stream.error(new Error('connection reset')) })
    answering(async () => new Response(broken, { headers: { 'content-type': 'application/pdf' } }))
    expect(await makePaper('/paper')).toMatchObject({
      ok: false,
      why: expect.stringContaining('went away') as string,
    })
  })
})
