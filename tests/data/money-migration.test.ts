import { expect, it } from 'vitest'
import type { Provider } from '@/lib/data/gate/provider'
import { readMigrations } from '@/lib/cli/migration-files'
import { emptyDatabase } from '../setup/database'
import { plainSqlite } from '../setup/plain-sqlite'
import { withPostgres } from '../setup/postgres'

/** Rows of a shop from before invoices. By hand, in cents. */
const shop = `
  INSERT INTO "Customer" ("id", "createdAt") VALUES ('c', '2026-03-02T08:00:00Z');
  INSERT INTO "Job" ("id", "number", "customerId", "preset", "partsPlace", "note", "createdAt", "byId") VALUES
    ('a', '26-0001', 'c', 'refresh', '', '', '2026-03-02T08:00:00Z', 'p'),
    ('b', '26-0002', 'c', 'refresh', '', '', '2026-03-02T08:00:00Z', 'p'),
    ('n', '26-0003', 'c', 'refresh', '', '', '2026-03-02T08:00:00Z', 'p');
  INSERT INTO "PriceLine" ("id", "jobId", "text", "quantity", "unitMinor", "taxBasisPoints", "createdAt", "endedAt") VALUES
    ('1', 'a', 'Flat cut', 2, 12000, 1000, '2026-03-02T08:00:00Z', NULL),
    ('2', 'a', 'Parts', 3, 33, 825, '2026-03-02T08:00:00Z', NULL),
    ('3', 'a', 'Taken off', 1, 99900, 825, '2026-03-02T08:00:00Z', '2026-03-02T09:00:00Z'),
    ('4', 'b', 'Beyond 32 bits', 9999, 200000, 0, '2026-03-02T08:00:00Z', NULL);
  INSERT INTO "Payment" ("id", "jobId", "kind", "minor", "how", "at", "byId") VALUES
    ('x', 'a', 'deposit', 10000, 'cash', '2026-03-02T08:00:00Z', 'p'),
    ('y', 'a', 'payment', 20000, 'card', '2026-03-02T08:00:00Z', 'p'),
    ('z', 'a', 'refund', 2500, '', '2026-03-02T08:00:00Z', 'p'),
    ('w', 'n', 'deposit', 700, '', '2026-03-02T08:00:00Z', 'p');`

/** Everything before invoices, then the shop, then what came with them. */
const scripts = (provider: Provider): string[] => {
  const all = readMigrations(provider)
  const at = all.findIndex(({ name }) => name.endsWith('_money'))
  return [...all.slice(0, at).map(({ sql }) => sql), shop, all[at]?.sql ?? '']
}

const due = `SELECT "number", "dueMinor" FROM "Job" ORDER BY "number"`
const lines = `SELECT "id", "quantityThousandths" FROM "PriceLine" ORDER BY "id"`

/** a: 240.00 + 24.00 + 0.99 + 0.08 = 265.07, paid 100.00 + 200.00 − 25.00 = 275.00: 9.93 too much. n: 7.00 too much. */
const expected = {
  due: [
    { number: '26-0001', dueMinor: -993 },
    { number: '26-0002', dueMinor: 1_999_800_000 },
    { number: '26-0003', dueMinor: -700 },
  ],
  lines: [
    { id: '1', quantityThousandths: 2000 },
    { id: '2', quantityThousandths: 3000 },
    { id: '3', quantityThousandths: 1000 },
    { id: '4', quantityThousandths: 9_999_000 },
  ],
}

it('a shop from before invoices keeps its lines, and what is owed is worked out (SQLite)', async () => {
  const { url, remove } = await emptyDatabase('sqlite')
  const found = plainSqlite(url, (file) => {
    for (const sql of scripts('sqlite')) file.exec(sql)
    return { due: file.prepare(due).all(), lines: file.prepare(lines).all() }
  })
  expect(found).toEqual(expected)
  await remove()
})

it('a shop from before invoices keeps its lines, and what is owed is worked out (PostgreSQL)', async () => {
  const { url, remove } = await emptyDatabase('postgresql')
  const found = await withPostgres(url, async (client) => {
    for (const sql of scripts('postgresql')) await client.query(sql)
    return { due: (await client.query(due)).rows, lines: (await client.query(lines)).rows }
  })
  expect(found).toEqual(expected)
  await remove()
})
