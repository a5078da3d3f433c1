import 'server-only'
import { hash, verify } from '@node-rs/argon2'
import { acceptablePin } from '@/lib/core/access/pin'
import { acceptablePassword } from '@/lib/core/access/password'
import { RefusedError } from '@/lib/core/errors'

const argon = { memoryCost: 19456, timeCost: 2, parallelism: 1 } // OWASP ASVS 5.0.0 / password storage: Argon2id, m 19 MiB

const hashPassword = (password: string): Promise<string> => hash(password, argon)

/** A hash nobody's password has: compared when the name is unknown, so that the answer takes as long. */
let decoy: Promise<string> | undefined

export async function passwordFits(stored: string | null, password: string): Promise<boolean> {
  decoy ??= hashPassword('no such person, no such password')
  // '' is kept for whoever has chosen none yet.
  const known = stored === null || stored === '' ? null : stored
  const fits = await verify(known ?? (await decoy), password)
  return fits && known !== null
}

/**
 * Refused, with the field named, when anyone would try it first. `own`: names of the shop and of the person. Hashing takes
 * long: do it before the transaction.
 */
export async function newPasswordHash(password: string, own: readonly string[], field = 'password'): Promise<string> {
  const answer = acceptablePassword(password, own)
  if (!answer.ok) throw new RefusedError({ ...answer.refusal, fields: { [field]: answer.refusal.message } })
  return hashPassword(answer.value)
}

/** The same for the six digits of a tablet. */
export async function newPinHash(pin: string): Promise<string> {
  const answer = acceptablePin(pin)
  if (!answer.ok) throw new RefusedError({ ...answer.refusal, fields: { pin: answer.refusal.message } })
  return hashPassword(answer.value)
}
