import 'server-only'
import { createHmac } from 'node:crypto'
import { env } from '@/lib/env'
import type { Moment } from './write'

/**
 * For input with a password in it. The content hash of an operation is kept in the database; a bare hash of a password
 * could be guessed in no time by whoever gets hold of the database, so it is keyed with the secret, which is not in it.
 */
export function secretOperation(moment: Moment): Moment {
  if (!moment.op) return moment
  const hash = createHmac('sha256', env().NEXTAUTH_SECRET).update(moment.op.hash).digest('hex')
  return { ...moment, op: { ...moment.op, hash } }
}
