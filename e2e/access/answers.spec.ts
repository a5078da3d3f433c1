import { readdirSync } from 'node:fs'
import { request as ask, type IncomingHttpHeaders, type OutgoingHttpHeaders } from 'node:http'
import { expect, test } from '@playwright/test'
import { firstPages } from '../../lib/cli/first-pages.mjs'

type Answer = { readonly status: number; readonly headers: IncomingHttpHeaders; readonly text: string }
type Asked = { readonly method?: string; readonly headers?: OutgoingHttpHeaders; readonly body?: readonly string[] }

/** As it is written, without a browser that mends it first. A body in pieces goes without its length. */
const send = (url: string, path: string, { method = 'GET', headers = {}, body = [] }: Asked = {}): Promise<Answer> =>
  new Promise((resolve, reject) => {
    const { hostname, port } = new URL(url)
    const asked = ask({ hostname, port, method, path, headers }, (answer) => {
      let text = ''
      answer.on('data', (piece) => (text += String(piece)))
      answer.on('end', () => resolve({ status: answer.statusCode ?? 0, headers: answer.headers, text }))
      answer.on('error', reject)
    })
    asked.on('error', reject)
    for (const piece of body) asked.write(piece)
    asked.end()
  })

/** The address of every page and route, each part that stands for something filled with what nothing is called. */
const addresses = readdirSync('app', { recursive: true, encoding: 'utf8' })
  .filter((file) => /(^|\/)(page\.tsx|route\.ts)$/.test(file))
  .map((file) => {
    const parts = file.split('/').slice(0, -1)
    const named = parts.filter((part) => !part.startsWith('(')).map((part) => part.replace(/^\[.*\]$/, 'nothing'))
    return `/${named.join('/')}`
  })

/** What anybody may open; a link that is dead, a code and a sign-in among it. */
const open = /^\/(sign-in|setup|tablet|reset|s\/|sw\.js|api\/(auth|health))/

test('nobody gets more than the way to the sign-in; every answer has its headers', async ({ baseURL }) => {
  const url = baseURL ?? ''
  expect(addresses.length).toBeGreaterThan(100)
  const answers = await Promise.all(addresses.map(async (path) => ({ path, ...(await send(url, path)) })))
  for (const { path, status, headers, text } of answers) {
    if (!open.test(path)) expect([path, [307, 401, 404, 405].includes(status)]).toEqual([path, true])
    expect([path, status < 500]).toEqual([path, true])
    expect([path, headers['x-content-type-options']]).toEqual([path, 'nosniff'])
    expect([path, headers['referrer-policy']]).toEqual([path, 'no-referrer'])
    expect([path, headers['x-powered-by'] ?? '']).toEqual([path, ''])
    expect([path, headers['cache-control']]).toEqual([path, expect.stringMatching(/no-store|no-cache/)])
    const policy = String(headers['content-security-policy'])
    expect([path, policy]).toEqual([path, expect.stringMatching(/'nonce-[\w+/=]{20,}'|default-src 'none'/)])
    if (policy.includes('nonce')) {
      for (const part of ["object-src 'none'", "base-uri 'none'", "frame-ancestors 'none'", "form-action 'self'"]) {
        expect([path, policy]).toEqual([path, expect.stringContaining(part)])
      }
    }
    expect([path, /at .*\.js:\d+|node_modules|Prisma/.test(text)]).toEqual([path, false])
  }
  const { headers } = await send(url, '/icon.svg')
  expect(headers['x-content-type-options']).toBe('nosniff')
})

test('what a server loads after its start are pages, and it is shown none of them', async ({ baseURL }) => {
  for (const path of firstPages) {
    const { status, headers } = await send(baseURL ?? '', path)
    expect([path, status, headers.location]).toEqual([path, 307, expect.stringContaining('/sign-in')])
  }
})

const action = '7f'.padEnd(42, '0')
const plain = 'text/plain;charset=UTF-8'
const large = Array.from({ length: 40 }, () => 'x'.repeat(100_000))

/** What is broken, and what it is told; 0: anything but a fault of the server's. */
const broken: readonly (readonly [number, string, Asked?])[] = [
  ...['/t/%ff', '/t/%', '/jobs/%00', '/jobs/%C3', '/find?q=%00', '/api/find?q=%00', '/s/%00', '/api/photos/%1b'].map(
    (path) => [400, path] as const,
  ),
  ...['/find?q=%ff', '/_next/image?url=%ff', '/icon%ff', `/jobs/${'a'.repeat(8000)}`, '/counter?page=1e999'].map(
    (path) => [0, path] as const,
  ),
  ...['PUT', 'DELETE', 'PATCH', 'TRACE'].map((method) => [405, '/account', { method }] as const),
  [0, '/account', { headers: { rsc: '1', 'next-router-state-tree': '{bad' } }],
  [0, '/account', { headers: { cookie: 'brasstag-session=%00%ff; x' } }],
]

/** The same, as changes sent from a page of the app. */
const brokenChanges: readonly (readonly [number, string, OutgoingHttpHeaders, readonly string[]])[] = [
  [405, '/account', { 'next-action': 'zzz', 'content-type': plain }, ['[]']],
  [405, '/account', { 'content-type': 'multipart/form-data; boundary=x' }, ['garbage']],
  [405, '/account', { 'content-type': 'application/x-www-form-urlencoded' }, ['a=%ff']],
  [0, '/account', { 'next-action': action, 'content-type': plain }, ['[{']],
  [0, '/account', { 'next-action': action, 'content-type': plain }, large],
  [413, '/account', { 'next-action': action, 'content-length': 4_000_000 }, large],
  [401, '/api/operations', { 'content-type': 'application/json' }, ['{']],
  [422, '/api/tablet/leave', { 'content-type': 'application/json' }, ['{']],
  [422, '/api/tablet/leave', { 'content-type': 'application/json' }, ['{"why":3}']],
  [413, '/api/tablet/leave', { 'content-type': 'application/json' }, large],
  [400, '/api/auth/callback/credentials', { 'content-type': 'application/json' }, ['{']],
]

test('what is broken, too large or from elsewhere is refused, and never a fault of the server’s', async ({
  baseURL,
}) => {
  const url = baseURL ?? ''
  const told = (status: number, wanted: number) => (wanted === 0 ? status > 0 && status < 500 : status === wanted)
  for (const [wanted, path, asked] of broken) {
    const { status, text } = await send(url, path, { ...asked, headers: { origin: url, ...asked?.headers } })
    expect([path.slice(0, 40), asked?.method ?? 'GET', status, told(status, wanted)]).toEqual([
      ...[path.slice(0, 40), asked?.method ?? 'GET', status, true],
    ])
    expect(text).not.toMatch(/at .*\.js:\d+/)
  }
  for (const [wanted, path, headers, body] of brokenChanges) {
    const { status } = await send(url, path, { method: 'POST', headers: { origin: url, ...headers }, body })
    expect([path, headers, status, told(status, wanted)]).toEqual([path, headers, status, true])
  }
  for (const origin of ['https://elsewhere.example', 'null', '']) {
    const headers = { ...(origin === '' ? {} : { origin }), 'next-action': action }
    const { status } = await send(url, '/account', { method: 'POST', headers })
    expect([origin, status]).toEqual([origin, 403])
  }
})
