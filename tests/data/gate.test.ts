import { describe, expect, it } from 'vitest'
import { describeOnBoth, freshDatabase, type Open } from '../setup/database'
import { stockClient } from '../setup/stock-adapter'

type Client = Awaited<ReturnType<Open>>['client']

const failingTransactions = 150
const singleWrites = 900
const timeLimits = { maxWait: 120_000, timeout: 120_000 }

const aLittleLater = () => new Promise((resolve) => setTimeout(resolve, 1))

/** Writes a row that must never be seen, waits for something else than the database, and fails. */
const failingTransaction = (client: Client, number: number): Promise<void> =>
  client
    .$transaction(async (tx) => {
      await tx.counter.create({ data: { name: `undone ${number}`, value: number } })
      await aLittleLater()
      await tx.counter.count()
      throw new Error('on purpose')
    }, timeLimits)
    .then(
      () => expect.unreachable('the transaction was to fail'),
      (error: unknown) => expect(String(error)).toContain('on purpose'),
    )

type Outcome = { readonly acknowledged: number; readonly dirtyReads: number; readonly found: number }

/** Both at once; what was acknowledged is counted against what is there afterwards. */
async function writeBesideFailures(client: Client): Promise<Outcome> {
  let acknowledged = 0
  let dirtyReads = 0
  const singleWrite = async (number: number) => {
    await client.counter.create({ data: { name: `kept ${number}`, value: number } })
    acknowledged += 1
    if (number % 9 === 0) dirtyReads += await client.counter.count({ where: { name: { startsWith: 'undone' } } })
  }
  const failures = Array.from({ length: failingTransactions }, (_, i) => failingTransaction(client, i))
  const writes = Array.from({ length: singleWrites }, async (_, i) => {
    // Spread over the time that the transactions take, as the requests of a shop are.
    await new Promise((resolve) => setTimeout(resolve, i / 2))
    await singleWrite(i)
  })
  await Promise.all([...failures, ...writes])
  const found = await client.counter.count({ where: { name: { startsWith: 'kept' } } })
  return { acknowledged, dirtyReads, found }
}

describeOnBoth('single writes beside failing transactions', (open) => {
  it('lose nothing and read nothing that is not committed', { timeout: 240_000 }, async () => {
    const { client } = await open()
    expect(await writeBesideFailures(client)).toEqual({
      acknowledged: singleWrites,
      dirtyReads: 0,
      found: singleWrites,
    })
    expect(await client.counter.count()).toBe(singleWrites)
  })
})

describe('the stock adapter', () => {
  it('loses acknowledged writes and reads uncommitted rows: what the gate is for', { timeout: 240_000 }, async () => {
    const database = await freshDatabase('sqlite')
    const client = stockClient(database.url)
    try {
      const { acknowledged, found, dirtyReads } = await writeBesideFailures(client)
      expect(acknowledged).toBe(singleWrites)
      expect(found).toBeLessThan(acknowledged)
      expect(dirtyReads).toBeGreaterThan(0)
    } finally {
      await client.$disconnect()
      await database.remove()
    }
  })
})
