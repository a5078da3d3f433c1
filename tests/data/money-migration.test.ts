import { expect, it } from 'vitest'
import { moneyFacts } from '@/lib/data/stored/money-facts'
import type { Provider } from '@/lib/data/gate/provider'
import { readMigrations } from '@/lib/cli/migration-files'
import { moneyPaperData } from '@/lib/papers/money-paper-data'
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

/** Everything before a migration, then rows of that time, then the migration. */
const scripts = (provider: Provider, migration = '_money', rows = shop): string[] => {
  const all = readMigrations(provider)
  const at = all.findIndex(({ name }) => name.endsWith(migration))
  return [...all.slice(0, at).map(({ sql }) => sql), rows, all[at]?.sql ?? '']
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

/** Rows from before rates had more than two decimals: 8.25 %, 99.99 %, 0.01 % and none; of other tables nothing. */
const hundredths = `
  INSERT INTO "TaxRate" ("id", "name", "basisPoints", "createdAt") VALUES
    ('s', 'Sales tax', 825, '2026-03-02T08:00:00Z'), ('e', 'Exempt', 0, '2026-03-02T08:00:00Z');
  INSERT INTO "PriceItem" ("id", "stepId", "text", "unitMinor", "taxBasisPoints", "createdAt") VALUES
    ('i', '', 'Courier', 1250, 9999, '2026-03-02T08:00:00Z');
  INSERT INTO "PriceLine" ("id", "jobId", "text", "quantityThousandths", "unitMinor", "taxBasisPoints", "createdAt") VALUES
    ('l', 'a', 'Flat cut', 1000, 33, 825, '2026-03-02T08:00:00Z'), ('n', 'a', 'Wash', 1000, 33, 0, '2026-03-02T08:00:00Z');
  INSERT INTO "Finding"
    ("id", "visitId", "what", "taxBasisPoints", "addsWork", "reportedAt", "reportedById", "askedHow", "answeredBy")
    VALUES ('f', 'v', 'Guide 3 is loose', 1, '', '2026-03-02T08:00:00Z', 'p', '', '');`
const byThemselves: Readonly<Record<Provider, string>> = {
  sqlite: `PRAGMA foreign_keys = OFF; ${hundredths}`,
  postgresql: `SET session_replication_role = replica; ${hundredths}`,
}

const rates = `
  SELECT "id", "rateMillionths" AS rate FROM "TaxRate" UNION ALL SELECT "id", "taxMillionths" FROM "PriceItem"
  UNION ALL SELECT "id", "taxMillionths" FROM "PriceLine" UNION ALL SELECT "id", "taxMillionths" FROM "Finding"
  ORDER BY 1`
/** A hundredth of a per cent is 1 / 10,000, a hundred millionths. */
const inMillionths = [
  { id: 'e', rate: 0 },
  { id: 'f', rate: 100 },
  { id: 'i', rate: 999_900 },
  { id: 'l', rate: 82_500 },
  { id: 'n', rate: 0 },
  { id: 's', rate: 82_500 },
]

it('rates with two decimals are the same rates in millionths (SQLite)', async () => {
  const { url, remove } = await emptyDatabase('sqlite')
  const found = plainSqlite(url, (file) => {
    for (const sql of scripts('sqlite', '_tax_rates', byThemselves.sqlite)) file.exec(sql)
    return file.prepare(rates).all()
  })
  expect(found).toEqual(inMillionths)
  await remove()
})

it('rates with two decimals are the same rates in millionths (PostgreSQL)', async () => {
  const { url, remove } = await emptyDatabase('postgresql')
  const found = await withPostgres(url, async (client) => {
    for (const sql of scripts('postgresql', '_tax_rates', byThemselves.postgresql)) await client.query(sql)
    return (await client.query(rates)).rows
  })
  expect(found).toEqual(inMillionths)
  await remove()
})

/** An invoice as it was frozen then: 0.99 at 8.25 % is 0.08 of tax, and 5.00 at 10 % without a name is 0.50. */
const frozen = {
  ...{ shape: 1, kind: 'invoice', number: 'I-0001', at: '2026-03-02T08:00:00.000Z', locale: 'en-US' },
  ...{ timeZone: 'America/New_York', currency: 'USD', jobNumber: '26-0001', engine: '', heads: ['T-0001'] },
  shop: { name: 'Halden Heads', lines: [] },
  customer: { name: 'Ada Holm', address: '' },
  lines: [
    ...[
      {
        text: 'Wash',
        quantityThousandths: 3000,
        unitMinor: 33,
        taxName: 'Sales tax',
        taxBasisPoints: 825,
        netMinor: 99,
      },
      { text: 'Parts', quantityThousandths: 1000, unitMinor: 500, taxName: '', taxBasisPoints: 1000, netMinor: 500 },
    ].map((line, at) => ({ ...line, reason: '', line: at })),
  ],
  taxes: [
    { name: 'Sales tax', basisPoints: 825, netMinor: 99, taxMinor: 8 },
    { name: '', basisPoints: 1000, netMinor: 500, taxMinor: 50 },
  ],
  ...{ netMinor: 599, taxMinor: 58, totalMinor: 657, paidMinor: 0, balance: { code: 'to-pay', minor: 657 } },
  ...{ of: '', reason: '', payment: null },
}

it('an invoice from before prints the rates and amounts that it had', () => {
  const facts = moneyFacts.read(JSON.stringify(frozen), 'i')
  expect(facts.lines.map(({ taxMillionths }) => taxMillionths)).toEqual([82_500, 100_000])
  expect(facts.taxes.map(({ rateMillionths }) => rateMillionths)).toEqual([82_500, 100_000])
  const { lines, sums } = moneyPaperData(facts)
  expect(lines.map(({ tax }) => tax)).toEqual(['Sales tax, 8.25 %', '10 %'])
  expect(sums.map(({ label, amount }) => [label, amount])).toEqual([
    ['Net', '$5.99'],
    ['Sales tax, 8.25 %, on $0.99', '$0.08'],
    ['Tax, 10 %, on $5.00', '$0.50'],
    ['Total', '$6.57'],
    ['Paid so far', '$0.00'],
    ['To pay', '$6.57'],
  ])
})
