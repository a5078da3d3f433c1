import { beforeEach, describe, expect, it, vi } from 'vitest'
import { z } from 'zod'
import type { Actor } from '@/lib/core/access/roles'
import { RefusedError, type Refusal } from '@/lib/core/errors'
import type { Moment } from '@/lib/data/write'
import { defineAction } from '@/lib/web/define-action'
import { errorResponse } from '@/lib/web/error-to-response'

const page = vi.hoisted(() => ({ drawn: 0, actor: null as Actor | null, mustAsk: '' }))
vi.mock('next/cache', () => ({ revalidatePath: () => void (page.drawn += 1) }))
vi.mock('next/navigation', () => ({
  redirect: (to: string) => {
    throw new Error(`redirect ${to}`)
  },
}))
vi.mock('@/lib/web/require-actor', () => ({
  currentActor: async () => null,
  requireActor: async () => {
    if (page.actor) return page.actor
    throw new RefusedError({ code: 'not-signed-in', message: 'You are signed out.' })
  },
  refuseUnlessAsked: async (deed: string) => {
    if (page.mustAsk === deed) throw new RefusedError({ code: 'ask-again', message: 'Type your password once more.' })
  },
}))
vi.mock('@/lib/web/log', () => ({ log: { error: () => undefined } }))

const ada = { personId: 'p', name: 'Ada Quill', roles: ['machinist'], grants: [] } as object as Actor
const op = '0b5c4f0e-6c3a-4a57-9b0e-0d8f4f7f1a11'
const schema = z.object({ text: z.string().min(2, 'Too short.').max(5, 'Too long.').regex(/^\d*$/, 'Figures only.') })

/** What the use case was given, and what it answers. */
const seen: { actor: Actor; input: unknown; moment: Moment }[] = []
const done = async (actor: Actor, input: { text: string }, moment: Moment) => {
  seen.push({ actor, input, moment })
  return { took: input.text }
}
const refusing = (refusal: Refusal) =>
  defineAction('deed', schema, async () => {
    throw new RefusedError(refusal)
  })

beforeEach(() => {
  seen.length = 0
  page.drawn = 0
  page.actor = ada
  page.mustAsk = ''
})

describe('a deed', () => {
  it('that asks for the password is not done before it was typed', async () => {
    page.mustAsk = 'deed'
    const answer = await defineAction('deed', schema, done)({ op, input: { text: '641' } })
    expect(answer).toMatchObject({ ok: false, refusal: { code: 'ask-again' } })
    expect(seen).toEqual([])
  })

  it('is done by whoever is signed in, with what was parsed, and the page comes as it is then', async () => {
    const answer = await defineAction('deed', schema, done)({ op, input: { text: '641' } })
    expect(answer).toEqual({ ok: true, value: { took: '641' } })
    expect(seen).toMatchObject([{ actor: ada, input: { text: '641' }, moment: { op: { id: op } } }])
    expect(page.drawn).toBe(1)
  })

  it('that leads elsewhere goes there when it is done, and only then', async () => {
    const leads = defineAction('deed', schema, done, ({ took }) => `/jobs/${took}`)
    await expect(leads({ op, input: { text: '641' } })).rejects.toThrow('redirect /jobs/641')
    expect(await leads({ op, input: { text: 'x' } })).toMatchObject({ ok: false })
  })

  it('is not done by nobody, nor without an operation id', async () => {
    expect(await defineAction('deed', schema, done)({ op: '7', input: { text: '641' } })).toMatchObject({
      refusal: { code: 'invalid', message: /out of date/ },
    })
    page.actor = null
    expect(await defineAction('deed', schema, done)({ op, input: { text: '641' } })).toMatchObject({
      refusal: { code: 'not-signed-in' },
    })
    expect(seen).toEqual([])
  })

  it('is another than a deed of another name with the same content, and the same as itself', async () => {
    for (const name of ['start', 'start', 'tick'])
      await defineAction(name, schema, done)({ op, input: { text: '641' } })
    const [first, again, other] = seen.map(({ moment }) => moment.op?.hash)
    expect(again).toBe(first)
    expect(other).not.toBe(first)
  })
})

describe('what is wrong', () => {
  it('with a field is said under it, the first thing first', async () => {
    expect(await defineAction('deed', schema, done)({ op, input: { text: 'x' } })).toEqual({
      ok: false,
      refusal: { code: 'invalid', message: 'Too short.', fields: { text: 'Too short.' } },
    })
  })

  it('inside is not told to the person', async () => {
    const broken = defineAction('deed', schema, async () => {
      throw new Error('SELECT * FROM secret')
    })
    const answer = await broken({ op, input: { text: '641' } })
    expect(answer).toMatchObject({ ok: false, refusal: { code: 'failed' } })
    expect(JSON.stringify(answer)).not.toContain('secret')
  })
})

describe('after a refusal the page', () => {
  const refuse = async (refusal: Refusal) => {
    await refusing(refusal)({ op, input: { text: '641' } })
    return page.drawn
  }

  it.each(['wrong-state', 'not-on-route', 'conflict'] as const)(
    'that is out of date is drawn again: %s',
    async (code) => {
      expect(await refuse({ code, message: '' })).toBe(1)
    },
  )

  it('stays when the conflict says itself what came between, or when nothing is out of date', async () => {
    const theirs = { who: 'Dov', verb: 'tick', at: '', seen: 7 } as const
    expect(await refuse({ code: 'conflict', message: '', theirs })).toBe(0)
    expect(await refuse({ code: 'invalid', message: '' })).toBe(0)
    expect(await refuse({ code: 'hold', message: '' })).toBe(0)
  })
})

it.each([
  ['invalid', 422],
  ['not-signed-in', 401],
  ['not-allowed', 403],
  ['not-found', 404],
  ['conflict', 409],
  ['too-many', 429],
] as const)('%s is answered as %i, and kept by nobody', async (code, status) => {
  const response = errorResponse(new RefusedError({ code, message: 'So it is.' }))
  expect(response.status).toBe(status)
  expect(response.headers.get('Cache-Control')).toBe('no-store')
  expect(await response.json()).toEqual({ refusal: { code, message: 'So it is.' } })
})
