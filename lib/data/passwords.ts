import 'server-only'
import { hash, verify } from '@node-rs/argon2'
import { acceptablePin } from '@/lib/core/access/pin'
import { refuse, RefusedError, type Result } from '@/lib/core/errors'
import { commonPasswords } from './common-passwords'

const argon = { memoryCost: 19456, timeCost: 2, parallelism: 1 } // OWASP ASVS 5.0.0 / password storage: Argon2id, m 19 MiB

const hashPassword = (password: string): Promise<string> => hash(password, argon)

/** A hash nobody's password has: compared when the name is unknown, so that the answer takes as long. */
let decoy: Promise<string> | undefined

export async function passwordFits(stored: string | null, password: string): Promise<boolean> {
  decoy ??= hashPassword('no such person, no such password')
  const fits = await verify(stored ?? (await decoy), password)
  return fits && stored !== null
}

/** Length and not among the common ones; no composition rules. */
function acceptablePassword(password: string): Result<string> {
  if (password.length < 8) return refuse('invalid', 'A password needs at least 8 characters; 15 or more are better.')
  if (password.length > 200) return refuse('invalid', 'A password may have at most 200 characters.')
  if (commonPasswords.has(password.toLowerCase())) {
    return refuse('invalid', 'This password is among the first that anyone would try. Take another.')
  }
  return { ok: true, value: password }
}

/** Refused, with the field named, when anyone would try it first. Hashing takes long: do it before the transaction. */
export async function newPasswordHash(password: string, field = 'password'): Promise<string> {
  const answer = acceptablePassword(password)
  if (!answer.ok) throw new RefusedError({ ...answer.refusal, fields: { [field]: answer.refusal.message } })
  return hashPassword(answer.value)
}

/** The same for the six digits of a tablet. */
export async function newPinHash(pin: string): Promise<string> {
  const answer = acceptablePin(pin)
  if (!answer.ok) throw new RefusedError({ ...answer.refusal, fields: { pin: answer.refusal.message } })
  return hashPassword(answer.value)
}
