import { NextRequest } from 'next/server'
import { beforeEach, describe, expect, it, vi } from 'vitest'
import type { Actor } from '@/lib/core/access/roles'
import { requirePerson, signedIn } from '@/lib/web/require-actor'
import { proxy } from '@/proxy'

const request = vi.hoisted(() => ({ headers: new Headers(), session: '', actor: null as Actor | null }))

vi.mock('next/headers', () => ({
  headers: async () => request.headers,
  cookies: async () => ({ get: () => (request.session === '' ? undefined : { value: request.session }) }),
}))
vi.mock('next/navigation', () => ({
  redirect: (to: string) => {
    throw new Error(`redirect ${to}`)
  },
  forbidden: () => {
    throw new Error('forbidden')
  },
}))
vi.mock('next-auth/jwt', () => ({ decode: async () => ({ sid: 'session' }) }))
vi.mock('@/lib/data/sessions', () => ({
  signedInBy: async () => (request.actor ? { actor: request.actor, tablet: null } : null),
}))
vi.mock('@/lib/env', () => ({ env: () => ({ NEXTAUTH_SECRET: 'of a test' }) }))

const machinist = { personId: 'p', name: 'Ada Quill', roles: ['machinist'], grants: [] } as object as Actor

/** What a page reads of the address, as the proxy passes it on. */
async function arriveAt(address: string) {
  const passed = (await proxy(new NextRequest(`http://shop.example${address}`))).headers.get(
    'x-middleware-request-x-here',
  )
  request.headers = new Headers(passed === null ? {} : { 'x-here': passed })
}

describe('the way back after the sign-in', () => {
  beforeEach(() => {
    request.session = ''
    request.actor = null
  })

  it.each(['/counter', '/away?by=promise', '/counter/labels?tag=T-0401&tag=T-0402', '/find?q=a%20b'])(
    'leads to %s, query and all',
    async (address) => {
      await arriveAt(address)
      await expect(signedIn()).rejects.toThrow(`redirect /sign-in?next=${encodeURIComponent(address)}`)
      await expect(requirePerson('job.see')).rejects.toThrow(`redirect /sign-in?next=${encodeURIComponent(address)}`)
    },
  )

  it('takes no address that the browser sent as a header', async () => {
    const asked = new NextRequest('http://shop.example/counter', { headers: { 'x-here': '/elsewhere' } })
    expect((await proxy(asked)).headers.get('x-middleware-request-x-here')).toBe('/counter')
  })

  it('is not asked of somebody signed in, and a page still asks for its own right', async () => {
    request.session = 'token'
    request.actor = machinist
    await arriveAt('/back-room/people')
    await expect(signedIn()).resolves.toBe(machinist)
    await expect(requirePerson('job.see')).resolves.toBe(machinist)
    await expect(requirePerson('person.change')).rejects.toThrow('forbidden')
  })
})
