import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { closeClient, openClient } from '@/lib/data/client'
import { appendOnlyTables } from '@/lib/data/gate/triggers'
import { describeOnBoth, testDatabase, type TestDatabase } from '../setup/database'
import { factRows } from '../setup/fact-rows'

const contentOf = (database: TestDatabase, table: string) => database.client.$queryRawUnsafe(`SELECT * FROM "${table}"`)

it('every fact that the shop must be able to show later is only ever added to', () => {
  expect([...appendOnlyTables].sort()).toEqual(
    [
      ...['VisitEvent', 'ReadingSet', 'Reading', 'Waiver', 'PlanVersion', 'PlanAcceptance', 'Release', 'Estimate'],
      ...['OutsidePromise', 'SupplyPromise', 'Payment', 'CallEntry', 'AuditEntry', 'Operation'],
      ...['PaymentVoid', 'MoneyPaper', 'MoneyPaperFile'],
    ].sort(),
  )
})

describe.each(['sqlite', 'postgresql'] as const)('what is only ever added to (%s)', (provider) => {
  // Nothing that is tried gets through, so one database serves for all tables.
  let database: TestDatabase
  beforeAll(async () => {
    database = await testDatabase(provider)
    await factRows(database.client)
  })
  afterAll(() => database.close())

  it.each(appendOnlyTables)('%s: no change, no removal', async (table) => {
    const before = await contentOf(database, table)
    expect(before).toHaveLength(1)
    const [column] = Object.keys((before as object[])[0] ?? {})
    const attempts = [
      `UPDATE "${table}" SET "${column}" = "${column}"`,
      `DELETE FROM "${table}"`,
      ...(provider === 'postgresql' ? [`TRUNCATE "${table}" CASCADE`] : []),
      ...(provider === 'sqlite' ? [`INSERT OR REPLACE INTO "${table}" SELECT * FROM "${table}"`] : []),
    ]
    for (const sql of attempts) await expect(database.client.$executeRawUnsafe(sql), sql).rejects.toThrow('append-only')
    expect(await contentOf(database, table)).toEqual(before)
  })
})

describeOnBoth('what keeps it so', (open, provider) => {
  it('a database without one of them is refused at start, by name', async () => {
    const { client, url } = await open()
    const on = provider === 'postgresql' ? ' ON "Waiver"' : ''
    await client.$executeRawUnsafe(`DROP TRIGGER "Waiver_no_delete"${on}`)
    await closeClient(url)
    await expect(openClient(url)).rejects.toThrow('Waiver_no_delete')
  })
})
