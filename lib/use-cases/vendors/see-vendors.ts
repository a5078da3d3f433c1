import { allow } from '@/lib/core/access/can'
import type { Actor } from '@/lib/core/access/roles'
import { must } from '@/lib/core/errors'
import { lastChange, type LastChange } from '@/lib/data/audit-trail'
import { db } from '@/lib/data/db'
import { mapPage, type Paged } from '@/lib/data/paging'
import { listVendors, vendorById } from '@/lib/data/vendors'

export type VendorSeen = {
  readonly id: string
  readonly name: string
  readonly phone: string
  readonly email: string
  readonly address: string
  readonly services: string
  /** How many heads make a full box; null: a head is sent when it is ready. */
  readonly boxHeads: number | null
  readonly retired: boolean
  readonly version: number
}

type Row = Awaited<ReturnType<typeof vendorById>>

function seen(row: Row): VendorSeen {
  const { id, name, phone, email, address, services, boxHeads, version } = row
  return { id, name, phone, email, address, services, boxHeads, version, retired: row.retiredAt !== null }
}

export async function seeVendors(actor: Actor, page = 1): Promise<Paged<VendorSeen>> {
  must(allow(actor, 'vendor.change'))
  return mapPage(await listVendors(await db(), page), seen)
}

export async function seeVendor(
  actor: Actor,
  vendorId: string,
): Promise<{ vendor: VendorSeen; last: LastChange | null }> {
  must(allow(actor, 'vendor.change'))
  const client = await db()
  const vendor = await vendorById(client, vendorId)
  return { vendor: seen(vendor), last: await lastChange(client, 'vendor', vendorId) }
}
