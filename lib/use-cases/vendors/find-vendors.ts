import { allow } from '@/lib/core/access/can'
import type { Actor } from '@/lib/core/access/roles'
import { must } from '@/lib/core/errors'
import { pickAsked } from '@/lib/core/find/pick'
import { vendorPicks, type VendorPick } from '@/lib/data/vendors'
import { db } from '@/lib/data/db'

export type { VendorPick }

/** Vendors in use whose names or services hold what is typed. */
export async function findVendors(actor: Actor, input: { q: string }): Promise<readonly VendorPick[]> {
  must(allow(actor, 'outside.send'))
  return (await vendorPicks(await db(), pickAsked(input.q))).rows
}
