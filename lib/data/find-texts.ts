import 'server-only'
import { customerText, headText } from '@/lib/core/find/texts'
import type { Tx } from './db'

/**
 * Writes what these customers are found by, in the transaction that changed them: folding accents is the program's, not
 * the database's, so that both databases find alike. Those that were merged into another or blanked have no text.
 */
export async function putCustomerTexts(tx: Tx, customerIds: readonly string[]): Promise<void> {
  for (const customerId of customerIds) {
    const text = await textOf(tx, customerId)
    if (text === null) await tx.customerText.deleteMany({ where: { customerId } })
    else await tx.customerText.upsert({ where: { customerId }, create: { customerId, text }, update: { text } })
  }
}

async function textOf(tx: Tx, id: string): Promise<string | null> {
  const customer = await tx.customer.findUniqueOrThrow({ where: { id }, include: { contact: true } })
  if (customer.mergedIntoId !== null || !customer.contact || customer.contact.blankedAt) return null
  const merged = await contactsMergedInto(tx, [id])
  return customerText([customer.contact, ...merged])
}

/** Contacts of all that turned out to be these customers, however many merges ago. */
async function contactsMergedInto(tx: Tx, ids: readonly string[]) {
  if (ids.length === 0) return []
  const found = await tx.customer.findMany({
    where: { mergedIntoId: { in: [...ids] } },
    select: { id: true, contact: true },
  })
  const here = found.flatMap(({ contact }) => (contact && !contact.blankedAt ? [contact] : []))
  const further: typeof here = await contactsMergedInto(
    tx,
    found.map(({ id }) => id),
  )
  return [...here, ...further]
}

/** Writes what a head is found by. */
export async function putHeadText(tx: Tx, headId: string): Promise<void> {
  const head = await tx.head.findUniqueOrThrow({ where: { id: headId }, include: { casting: true } })
  const text = headText({ stamp: head.stamp, marks: head.marks, casting: head.casting?.name ?? '' })
  await tx.headText.upsert({ where: { headId }, create: { headId, text }, update: { text } })
}

/** All heads of a casting whose name has changed. */
export async function putHeadTextsOfCasting(tx: Tx, castingId: string, casting: string): Promise<void> {
  const heads = await tx.head.findMany({
    where: { castingId },
    select: { id: true, stamp: true, marks: true },
  })
  for (const { id, stamp, marks } of heads) {
    await tx.headText.updateMany({ where: { headId: id }, data: { text: headText({ stamp, marks, casting }) } })
  }
}
