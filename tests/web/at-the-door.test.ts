import { describe, expect, it } from 'vitest'
import { refusedAtDoor } from '@/lib/web/at-the-door'

type More = { readonly method?: string; readonly headers?: Record<string, string> }

const host = 'shop.example'
const asked = (address: string, { method = 'GET', headers = {} }: More = {}) => {
  const nextUrl = new URL(address, `http://${host}`)
  return refusedAtDoor({ method, nextUrl, headers: new Headers({ host, ...headers }) })
}
const status = (address: string, more?: More) => asked(address, more)?.status ?? 'in'
const posted = (address: string, headers: Record<string, string> = {}) =>
  status(address, {
    method: 'POST',
    headers: { origin: `http://${host}`, 'next-action': '7f'.padEnd(42, '0'), ...headers },
  })

describe('an address', () => {
  it.each([
    '/',
    '/jobs/26-0001',
    '/t/T-0401',
    '/t/caf%C3%A9',
    '/find?q=3%2F8%E2%80%B3+stud',
    '/t/a%0Ab',
    '/find?q=100%',
  ])('%s comes in', (address) => expect(status(address)).toBe('in'))
  it.each([
    '/t/%ff',
    '/t/%',
    '/t/%zz',
    '/jobs/%00',
    '/t/%C3',
    '/find?q=%00',
    '/find?%01=x',
    '/api/find?q=a%1Bb',
    '/s/%7F',
  ])('%s is told that it cannot be read', (address) => expect(status(address)).toBe(400))
})

describe('a change', () => {
  it('comes from a page of the app, or is refused, also by whoever says nothing of where it comes from', () => {
    expect(posted('/account')).toBe('in')
    expect(posted('/account', { origin: 'https://elsewhere.example' })).toBe(403)
    expect(posted('/account', { origin: 'null' })).toBe(403)
    expect(posted('/account', { origin: `http://${host}.elsewhere.example` })).toBe(403)
    expect(status('/api/operations', { method: 'POST' })).toBe(403)
    expect(status('/api/operations', { method: 'DELETE', headers: { origin: `http://${host}` } })).toBe(405)
  })

  it('of a page is one of its actions, named as the framework names them', () => {
    for (const action of ['', 'zzz', '7f', '7f'.padEnd(50, '0')]) {
      expect([action, posted('/account', { 'next-action': action })]).toEqual([action, 405])
    }
    expect(posted('/api/operations', { 'next-action': '' })).toBe('in')
  })

  it('is not larger than a form is; where it may be, what is larger still', () => {
    const of = (bytes: number) => ({ 'content-length': String(bytes) })
    expect([posted('/account', of(1_000_000)), posted('/account', of(1_000_001))]).toEqual(['in', 413])
    expect([posted('/api/operations', of(2_000_000)), posted('/api/operations', of(2_000_001))]).toEqual(['in', 413])
    expect([posted('/api/photos', of(9_000_000)), posted('/api/photos', of(16_000_001))]).toEqual(['in', 413])
  })
})

it('the refusal is a page in words, or for a program a refusal as any other; neither loads or tells anything', async () => {
  const page = asked('/t/%ff')
  expect(await page?.text()).toContain('<h1>This address cannot be read</h1>')
  const answer = asked('/api/alike', { method: 'POST' })
  expect(await answer?.json()).toMatchObject({ refusal: { code: 'not-allowed' } })
  for (const one of [page, answer]) {
    expect(one?.headers.get('content-security-policy')).toContain("default-src 'none'")
    expect(one?.headers.get('cache-control')).toBe('no-store')
    expect(one?.headers.get('x-content-type-options')).toBe('nosniff')
  }
})
