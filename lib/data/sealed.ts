import 'server-only'
import { createCipheriv, createDecipheriv, hkdfSync, randomBytes } from 'node:crypto'
import { env } from '@/lib/env'

/**
 * What must be read again and must not stand in the database as it is: sealed with a key made from the server's secret,
 * which the database does not hold (a backup of the shop does, or it could not be put back). `purpose` is bound in: what was
 * sealed for one thing opens nothing else.
 */
const algorithm = 'aes-256-gcm'
const [ivLength, tagLength] = [12, 16]

const key = (): Buffer => Buffer.from(hkdfSync('sha256', env().NEXTAUTH_SECRET, '', 'brasstag sealed', 32))

export function seal(text: string, purpose: string): string {
  const iv = randomBytes(ivLength)
  const cipher = createCipheriv(algorithm, key(), iv).setAAD(Buffer.from(purpose))
  const sealed = Buffer.concat([cipher.update(text, 'utf8'), cipher.final()])
  return Buffer.concat([iv, cipher.getAuthTag(), sealed]).toString('base64url')
}

/** What was sealed; null when it was sealed with another secret or for another purpose, or was changed since. */
export function unseal(sealed: string, purpose: string): string | null {
  const bytes = Buffer.from(sealed, 'base64url')
  if (bytes.length < ivLength + tagLength) return null
  const tag = bytes.subarray(ivLength, ivLength + tagLength)
  const decipher = createDecipheriv(algorithm, key(), bytes.subarray(0, ivLength), { authTagLength: tagLength })
    .setAAD(Buffer.from(purpose))
    .setAuthTag(tag)
  try {
    const opened = [decipher.update(bytes.subarray(ivLength + tagLength)), decipher.final()]
    return Buffer.concat(opened).toString('utf8')
  } catch {
    return null
  }
}
