import 'server-only'
import { RefusedError } from '@/lib/core/errors'
import type { Reader } from './db'

export async function holdById(reader: Reader, id: string) {
  const hold = await reader.hold.findUnique({ where: { id } })
  if (!hold) throw new RefusedError({ code: 'not-found', message: 'There is no such hold here.' })
  return hold
}
