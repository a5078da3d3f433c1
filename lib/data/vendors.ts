import 'server-only'
import { RefusedError } from '@/lib/core/errors'
import type { Reader } from './db'
import { inUseFirst, pageOfRows, rowsOfPage } from './paging'

export async function vendorById(reader: Reader, id: string) {
  const vendor = await reader.vendor.findUnique({ where: { id } })
  if (!vendor) throw new RefusedError({ code: 'not-found', message: 'There is no such vendor here.' })
  return vendor
}

/** A page of them by name, those in use first. */
export const listVendors = async (reader: Reader, page: number) =>
  pageOfRows(
    await reader.vendor.findMany({ orderBy: [inUseFirst, { name: 'asc' }, { id: 'asc' }], ...rowsOfPage(page) }),
  )

/** A vendor that can be picked; null: not on record, or retired. */
export const vendorInUse = (reader: Reader, id: string) => reader.vendor.findFirst({ where: { id, retiredAt: null } })

/** Whom an order can go to, by name. */
export const vendorsInUse = (reader: Reader) =>
  reader.vendor.findMany({
    where: { retiredAt: null },
    orderBy: { name: 'asc' },
    select: { id: true, name: true, services: true },
  })
