import { allow } from '@/lib/core/access/can'
import type { Actor } from '@/lib/core/access/roles'
import { must } from '@/lib/core/errors'
import { csvOf } from '@/lib/core/money/csv'
import { dayIn } from '@/lib/core/shop/calendar'
import { customersAfter } from '@/lib/data/customer-record'
import { db } from '@/lib/data/db'
import { shopOf } from '@/lib/data/shop'
import { write, type Moment } from '@/lib/data/write'

const heading = ['Name', 'Phone', 'Other phone', 'E-mail', 'Address', 'Note', 'Since']

/** All customers as a file that a spreadsheet opens and that can be imported again; blanked and merged ones left out. On record. */
export async function exportCustomers(actor: Actor, { now }: Moment): Promise<{ name: string; text: string }> {
  must(allow(actor, 'customer.export'))
  const client = await db()
  const { timeZone } = await shopOf(client)
  const rows: string[][] = [heading]
  let after = ''
  for (;;) {
    const some = await customersAfter(client, after)
    for (const { name, phone, otherPhone, email, address, note, customer } of some) {
      rows.push([name, phone, otherPhone, email, address, note, dayIn(timeZone, customer.createdAt)])
    }
    const last = some.at(-1)
    if (!last) break
    after = last.customerId
  }
  await write(actor, { now }, async ({ audit }) => {
    audit({ action: 'export.customers', subjectId: 'all', changes: { count: rows.length - 1 } })
  })
  return { name: `customers-${dayIn(timeZone, now)}.csv`, text: csvOf(rows) }
}
