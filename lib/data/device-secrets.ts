import 'server-only'
import { createHash, randomBytes, randomInt } from 'node:crypto'

/** What a tablet shows of itself at each request: 192 bits. Only its hash is kept. */
export const newTabletToken = (): string => randomBytes(24).toString('base64url')

/** By which a browser is known again at a sign-in. It opens nothing; only its hash is kept. */
export const newBrowserMark = (): string => randomBytes(24).toString('base64url')

/** In the address of a link that lets a person choose a new password: 192 bits. Only its hash is kept. */
export const newResetToken = (): string => randomBytes(24).toString('base64url')

/** No letter or digit that is read as another one: no 0, O, 1, I, L, U, V. */
const letters = '23456789ABCDEFGHJKMNPQRSTWXYZ'
const codeLength = 8

/** Eight of 29 signs, in two groups: 5 · 10¹¹ codes, each of which lasts ten minutes. */
export function newTabletCode(): string {
  const signs = Array.from({ length: codeLength }, () => letters[randomInt(letters.length)])
  return `${signs.slice(0, 4).join('')}-${signs.slice(4).join('')}`
}

/** In small letters or run together it is the same code. */
const plain = (code: string): string => code.toUpperCase().replaceAll(/[^A-Z0-9]/g, '')

const sha256 = (text: string): string => createHash('sha256').update(text).digest('hex')

export const tokenHashOf = (token: string): string => sha256(token)
export const codeHashOf = (code: string): string => sha256(plain(code))
