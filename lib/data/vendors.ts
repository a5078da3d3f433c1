import 'server-only'
import { RefusedError } from '@/lib/core/errors'
import type { Reader } from './db'

export async function vendorById(reader: Reader, id: string) {
  const vendor = await reader.vendor.findUnique({ where: { id } })
  if (!vendor) throw new RefusedError({ code: 'not-found', message: 'There is no such vendor here.' })
  return vendor
}

/** By name; those in use first, retired ones after them. */
export async function listVendors(reader: Reader) {
  const vendors = await reader.vendor.findMany({ orderBy: { name: 'asc' } })
  return [...vendors.filter((vendor) => !vendor.retiredAt), ...vendors.filter((vendor) => vendor.retiredAt)]
}
