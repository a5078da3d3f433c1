import 'server-only'
import { RefusedError } from '@/lib/core/errors'
import { firstPicks, type PickAsked } from '@/lib/core/find/pick'
import type { Reader } from './db'
import { inUseFirst, pageOfRows, pageSize, rowsOfPage, type Paged } from './paging'
import { idsAsked, mostRead, picksOf } from './picks'

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

export type VendorPick = { readonly id: string; readonly name: string; readonly services: string }

/** Whom an order can go to, by name: the first hundred of those asked for. */
export async function vendorPicks(reader: Reader, asked: PickAsked = firstPicks): Promise<Paged<VendorPick>> {
  const found = await reader.vendor.findMany({
    where: { retiredAt: null, ...idsAsked(asked) },
    orderBy: [{ name: 'asc' }, { id: 'asc' }],
    select: { id: true, name: true, services: true },
    take: mostRead(asked, pageSize),
  })
  return picksOf(found, asked, pageSize, ({ name, services }) => `${name} ${services}`)
}
