import 'server-only'
import { createHash, createHmac, randomBytes, randomInt, timingSafeEqual } from 'node:crypto'

/** RFC 6238 with what every authenticator app takes: HMAC-SHA-1, six digits, steps of 30 s from 1970 on. */
const stepS = 30
const keyBytes = 20

/** RFC 4226, 5.3: four bytes at the offset that the last half byte names, without their sign, the last digits of that. */
export function codeOfStep(key: Uint8Array, step: number, digits = 6, algorithm = 'sha1'): string {
  const counter = Buffer.alloc(8)
  counter.writeBigUInt64BE(BigInt(step))
  const mac = createHmac(algorithm, key).update(counter).digest()
  const offset = (mac[mac.length - 1] ?? 0) & 0x0f
  const number = mac.readUInt32BE(offset) & 0x7fffffff
  return String(number % 10 ** digits).padStart(digits, '0')
}

export const stepOf = (now: Date): number => Math.floor(now.getTime() / 1000 / stepS)

const same = (a: string, b: string): boolean => a.length === b.length && timingSafeEqual(Buffer.from(a), Buffer.from(b))

/**
 * The time step that this code is of, one step before or after now at the most; null: of none, or of one that is not after
 * `lastStep`, the last that was taken.
 */
export function stepOfCode(key: Uint8Array, code: string, lastStep: number | null, now: Date): number | null {
  const digits = code.replaceAll(/\s/g, '')
  const here = stepOf(now)
  const fitting = [here - 1, here, here + 1].filter((step) => same(codeOfStep(key, step), digits))
  return fitting.find((step) => step > (lastStep ?? -1)) ?? null
}

export const newFactorKey = (): Uint8Array => randomBytes(keyBytes)

const base32 = 'ABCDEFGHIJKLMNOPQRSTUVWXYZ234567'

/** RFC 4648 without the filling at its end: a key as apps take it when it is typed. */
export function inBase32(bytes: Uint8Array): string {
  const bits = [...bytes].map((byte) => byte.toString(2).padStart(8, '0')).join('')
  const groups = bits.match(/.{1,5}/g) ?? []
  return groups.map((group) => base32[parseInt(group.padEnd(5, '0'), 2)]).join('')
}

/** What the QR code of a new key says. */
export function factorAddress(key: Uint8Array, signIn: string, shop: string): string {
  const issuer = shop.replaceAll(':', ' ').trim() || 'Brasstag'
  const query = new URLSearchParams({ secret: inBase32(key), issuer, algorithm: 'SHA1', digits: '6', period: '30' })
  const label = `${encodeURIComponent(issuer)}:${encodeURIComponent(signIn)}`
  return `otpauth://totp/${label}?${query.toString().replaceAll('+', '%20')}`
}

/** No letter or digit that is read as another one. */
const letters = '23456789abcdefghjkmnpqrstwxyz'
const codeSigns = 24
export const recoveryCodes = 10

/** 24 of 29 signs in six groups: 116 bits, so that a plain hash of it cannot be tried through. */
export function newRecoveryCode(): string {
  const signs = Array.from({ length: codeSigns }, () => letters[randomInt(letters.length)]).join('')
  return signs.replace(/(.{4})(?=.)/g, '$1-')
}

/** In capitals or run together it is the same code. */
export const recoveryHash = (code: string): string =>
  createHash('sha256')
    .update(code.toLowerCase().replaceAll(/[^a-z0-9]/g, ''))
    .digest('hex')
