import { allow, can } from '@/lib/core/access/can'
import type { Actor } from '@/lib/core/access/roles'
import { must } from '@/lib/core/errors'
import { listCustomers, type ListedCustomer } from '@/lib/data/customer-record'
import { customersLike } from '@/lib/data/customers'
import { db } from '@/lib/data/db'
import type { Paged } from '@/lib/data/paging'
import { shopOf } from '@/lib/data/shop'

export type CustomersView = Paged<ListedCustomer> & {
  readonly mayChange: boolean
  readonly timeZone: string
  readonly locale: string
  readonly currency: string
}

const mostFound = 50

/** Customers by name, a page at a time; or those whom a text names, the best first. */
export async function seeCustomers(actor: Actor, input: { q: string; page: number }): Promise<CustomersView> {
  must(allow(actor, 'customer.see'))
  const client = await db()
  const q = input.q.trim()
  const found = q.length < 2 ? null : await customersLike(client, q, mostFound)
  const list = await listCustomers(client, found ? 1 : input.page, found?.map(({ customerId }) => customerId) ?? null)
  const { timeZone, locale, currency } = await shopOf(client)
  return { ...list, mayChange: can(actor, 'customer.change'), timeZone, locale, currency }
}
