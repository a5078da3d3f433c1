import { allow } from '@/lib/core/access/can'
import type { Actor } from '@/lib/core/access/roles'
import { must } from '@/lib/core/errors'
import { unpaidJobs, type UnpaidJob } from '@/lib/data/books'
import { db } from '@/lib/data/db'
import type { Paged } from '@/lib/data/paging'

/** Jobs that were invoiced or handed over and are not paid in full, the oldest first. */
export async function seeUnpaid(actor: Actor, page = 1): Promise<Paged<UnpaidJob>> {
  must(allow(actor, 'price.see'))
  return unpaidJobs(await db(), page)
}
