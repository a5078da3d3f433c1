import { describe, expect, it } from 'vitest'
import { localPath } from '@/lib/web/local-path'

describe('where to go after the sign-in', () => {
  it.each(['/', '/counter', '/jobs/26-0117?from=find#prices', '/t/T-0412', '/find?q=a%20b', '/?a=%2F%2Fx'])(
    'goes to %s',
    (path) => {
      expect(localPath(path)).toBe(path)
    },
  )

  it.each([
    '//elsewhere.example',
    '/\\elsewhere.example',
    '/a\\b',
    'https://elsewhere.example/',
    'javascript:alert(1)',
    '/\t/elsewhere.example',
    '/\n/elsewhere.example',
    ' /counter',
    'counter',
    '',
    `/${'a'.repeat(2000)}`,
  ])('does not go to %j', (path) => {
    expect(localPath(path)).toBe('/')
  })

  it('never leaves the app, however a browser reads it', () => {
    for (const path of ['//x.example', '/\\x.example', '/\t/x.example', '/%2f/x.example', '/.//x.example']) {
      expect(new URL(localPath(path), 'http://shop.example').host).toBe('shop.example')
    }
  })

  it('goes to the start when nothing was asked', () => {
    expect(localPath(undefined)).toBe('/')
  })
})
