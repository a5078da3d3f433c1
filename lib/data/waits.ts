import 'server-only'
import { RefusedError } from '@/lib/core/errors'
import type { Reader } from './db'
import { conflictUnless, type Write } from './write'

export async function waitById(reader: Reader, id: string) {
  const wait = await reader.partsWait.findUnique({ where: { id } })
  if (!wait) throw new RefusedError({ code: 'not-found', message: 'There is no such wait here.' })
  return wait
}

/** Takes the wait's lock forward; refused when it was changed since `version` was read, or its parts have come. */
export async function bumpWait(
  ctx: Write,
  id: string,
  version: number,
  data: { arrivedAt?: Date } = {},
): Promise<void> {
  const changed = await ctx.tx.partsWait.updateMany({
    where: { id, version, arrivedAt: null },
    data: { ...data, version: { increment: 1 } },
  })
  conflictUnless(changed, 'this wait')
}
