import type { TestDatabase } from './database'

const everyTenth = (n: number) => n % 10 === 0

/**
 * So many of each kind that a shop keeps a list of, ids from x-000 on. Every tenth is retired, each at another moment.
 * They go past the use cases, which end some of these lists.
 */
export async function fillLists({ client }: TestDatabase, count: number, at: Date): Promise<void> {
  const rows = Array.from({ length: count }, (_, n) => {
    const number = String(n).padStart(3, '0')
    const retiredAt = everyTenth(n) ? new Date(at.getTime() - n * 1000) : null
    return { id: `x-${number}`, name: `Name ${number}`, createdAt: at, retiredAt }
  })
  await client.vendor.createMany({
    data: rows.map((row) => ({ ...row, phone: '', email: '', address: '', services: '' })),
  })
  await client.person.createMany({
    data: rows.map((row) => ({ ...row, signIn: `sign-in-${row.id}`, passwordHash: '', roles: 'counter', grants: '' })),
  })
  await client.castingRecord.createMany({
    data: rows.map((row) => ({
      ...{ ...row, nameLower: row.name.toLowerCase(), material: 'iron', chamberCount: 4, chamberShape: 'closed' },
      ...{ deepEdge: 'exhaust', note: '' },
    })),
  })
  await client.instrument.createMany({ data: rows.map((row) => ({ ...row, kind: 'burette' })) })
  await client.priceItem.createMany({
    data: rows.map(({ name: text, ...row }) => ({ ...row, text, stepId: '', unitMinor: 100, taxMillionths: 0 })),
  })
}
