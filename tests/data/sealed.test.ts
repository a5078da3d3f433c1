import { createDecipheriv, hkdfSync } from 'node:crypto'
import fc from 'fast-check'
import { beforeEach, expect, it, vi } from 'vitest'
import { seal, unseal } from '@/lib/data/sealed'

const secret = 'only for these tests, long enough'
beforeEach(() => void vi.stubEnv('NEXTAUTH_SECRET', secret))

it('any text comes back, and never looks the same twice', () => {
  fc.assert(
    fc.property(fc.string({ unit: 'grapheme' }), (text) => {
      const [one, two] = [seal(text, 'a'), seal(text, 'a')]
      expect(unseal(one, 'a')).toBe(text)
      expect(one).not.toBe(two)
      if (text.length > 3) expect(Buffer.from(one, 'base64url').toString('latin1')).not.toContain(text)
    }),
    { numRuns: 50 },
  )
})

it('is AES-256-GCM with a nonce of 12 bytes and a tag of 16, the purpose bound in', () => {
  const bytes = Buffer.from(seal('pässword', 'a purpose'), 'base64url')
  const key = Buffer.from(hkdfSync('sha256', secret, '', 'brasstag sealed', 32))
  const opened = createDecipheriv('aes-256-gcm', key, bytes.subarray(0, 12))
    .setAAD(Buffer.from('a purpose'))
    .setAuthTag(bytes.subarray(12, 28))
  expect(Buffer.concat([opened.update(bytes.subarray(28)), opened.final()]).toString()).toBe('pässword')
})

it('opens with nothing else: another secret, another purpose, a changed or a cut text', () => {
  const sealed = seal('token', 'message 1')
  expect(unseal(sealed, 'message 2')).toBeNull()
  const bytes = Buffer.from(sealed, 'base64url')
  for (let at = 0; at < bytes.length; at += 1) {
    const changed = Buffer.from(bytes)
    changed.writeUInt8(changed.readUInt8(at) ^ 1, at)
    expect(unseal(changed.toString('base64url'), 'message 1'), `byte ${at}`).toBeNull()
  }
  for (const length of [0, 11, 27, bytes.length - 1]) {
    expect(unseal(bytes.subarray(0, length).toString('base64url'), 'message 1')).toBeNull()
  }
  vi.stubEnv('NEXTAUTH_SECRET', 'another secret, long enough as well')
  expect(unseal(sealed, 'message 1')).toBeNull()
})
