import { RefusedError } from '@/lib/core/errors'
import { acceptablePassword, hashPassword } from '@/lib/data/passwords'

/** Refused, with the field named, when anyone would try it first. Hashing takes long: do it before the transaction. */
export async function newPasswordHash(password: string, field = 'password'): Promise<string> {
  const answer = acceptablePassword(password)
  if (!answer.ok) throw new RefusedError({ ...answer.refusal, fields: { [field]: answer.refusal.message } })
  return hashPassword(answer.value)
}
