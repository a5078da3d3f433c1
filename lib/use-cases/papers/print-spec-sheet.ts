import { allow } from '@/lib/core/access/can'
import type { Actor } from '@/lib/core/access/roles'
import { must } from '@/lib/core/errors'
import { db } from '@/lib/data/db'
import type { StoredPaper } from '@/lib/papers/kept-paper'
import { specPaper } from '@/lib/papers/spec-paper'

/** The spec sheet as it was frozen, or the paper of a head that went back as it is. */
export async function printSpecSheet(actor: Actor, visitId: string, revision?: number): Promise<StoredPaper> {
  must(allow(actor, 'paper.print'))
  return specPaper(await db(), visitId, revision)
}
