import type { Actor } from '@/lib/core/access/roles'
import { allow } from '@/lib/core/access/can'
import { must } from '@/lib/core/errors'
import { customersLike } from '@/lib/data/customers'
import { db } from '@/lib/data/db'

export type FoundCustomer = {
  readonly id: string
  readonly name: string
  readonly phone: string
  readonly email: string
  readonly address: string
}

const atMost = 8

/** Customers who were here before, as the name or phone number is typed at booking. */
export async function findCustomers(actor: Actor, input: { q: string }): Promise<FoundCustomer[]> {
  must(allow(actor, 'job.book'))
  if (input.q.trim().length < 2) return []
  const found = await customersLike(await db(), input.q, atMost)
  return found.map(({ customerId: id, name, phone, email, address }) => ({ id, name, phone, email, address }))
}
