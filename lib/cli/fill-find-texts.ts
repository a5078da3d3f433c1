import type { SqlDriverAdapter } from '@prisma/driver-adapter-utils'
import { customerText, headText, nameInOrder } from '@/lib/core/find/texts'
import { phoneCountry } from '@/lib/core/shop/country'
import { providerOf, type Provider } from '@/lib/data/gate/provider'
import { readPhone } from '@/lib/data/phone'
import { rowsOf, withConnection, type Row } from './connection'

/**
 * Fills what Find looks in for every customer and head that has none: those from before there was such a text. A migration
 * that changes how texts are made deletes them, and the next start makes them anew. Telephone numbers are read as well.
 */
export const fillFindTexts = (url: string): Promise<void> =>
  withConnection(url, async (connection) => {
    const fill = { connection, provider: providerOf(url) }
    await inChunks(() => someCustomers(fill))
    await inChunks(() => someHeads(fill))
  })

type Fill = { readonly connection: SqlDriverAdapter; readonly provider: Provider }

const chunk = 500

/** Until nothing is left to do. */
async function inChunks(some: () => Promise<number>): Promise<void> {
  while ((await some()) > 0);
}

const textWithout = `FROM "CustomerContact" c JOIN "Customer" k ON k."id" = c."customerId"
  LEFT JOIN "CustomerText" t ON t."customerId" = c."customerId"
  WHERE t."seq" IS NULL AND c."blankedAt" IS NULL AND k."mergedIntoId" IS NULL`

async function someCustomers(fill: Fill): Promise<number> {
  const rows = await rowsOf(
    fill.connection,
    `SELECT c."customerId", c."name", c."phone", c."otherPhone", c."email" ${textWithout}
     ORDER BY c."customerId" LIMIT ${chunk}`,
  )
  if (rows.length === 0) return 0
  const country = await countryOf(fill)
  const merged = await mergedContacts(fill, country)
  const contacts = rows.map((row) => contactOf(row, country))
  await inOneTransaction(fill, async (run) => {
    for (const contact of contacts) {
      await run(
        `UPDATE "CustomerContact" SET "nameLower" = ?, "phoneE164" = ?, "phoneDigits" = ?, "otherPhoneE164" = ?,
         "otherPhoneDigits" = ? WHERE "customerId" = ?`,
        [
          ...[contact.nameLower, contact.phoneE164, contact.phoneDigits, contact.otherPhoneE164],
          ...[contact.otherPhoneDigits, contact.id],
        ],
      )
      const text = customerText([contact, ...merged(contact.id)])
      await run(`INSERT INTO "CustomerText" ("customerId", "text") VALUES (?, ?)`, [contact.id, text])
    }
  })
  return rows.length
}

async function countryOf({ connection }: Fill): Promise<string> {
  const [shop] = await rowsOf(connection, 'SELECT "country", "locale", "currency" FROM "Shop"')
  return phoneCountry({
    country: String(shop?.[0] ?? ''),
    locale: String(shop?.[1] ?? 'en-US'),
    currency: String(shop?.[2] ?? 'USD'),
  })
}

function contactOf([id, name, phone, otherPhone, email]: Row, country: string) {
  const first = readPhone(String(phone), country)
  const other = readPhone(String(otherPhone), country)
  return {
    ...{ id: String(id), name: String(name), nameLower: nameInOrder(String(name)), email: String(email) },
    ...{ phoneE164: first.e164, phoneDigits: first.digits },
    ...{ otherPhoneE164: other.e164, otherPhoneDigits: other.digits },
  }
}

/** Contacts of those who turned out to be another customer, by that one. They are few. */
async function mergedContacts({ connection }: Fill, country: string) {
  const rows = await rowsOf(
    connection,
    `SELECT c."customerId", c."name", c."phone", c."otherPhone", c."email", k."mergedIntoId"
     FROM "Customer" k JOIN "CustomerContact" c ON c."customerId" = k."id"
     WHERE k."mergedIntoId" IS NOT NULL AND c."blankedAt" IS NULL`,
  )
  const all = rows.map((row) => ({ ...contactOf(row, country), into: String(row[5]) }))
  const mergedInto = (id: string): typeof all => {
    const here = all.filter(({ into }) => into === id)
    return [...here, ...here.flatMap((one) => mergedInto(one.id))]
  }
  return mergedInto
}

async function someHeads(fill: Fill): Promise<number> {
  const rows = await rowsOf(
    fill.connection,
    `SELECT h."id", h."stamp", h."marks", r."name" FROM "Head" h
     LEFT JOIN "CastingRecord" r ON r."id" = h."castingId" LEFT JOIN "HeadText" t ON t."headId" = h."id"
     WHERE t."seq" IS NULL ORDER BY h."id" LIMIT ${chunk}`,
  )
  await inOneTransaction(fill, async (run) => {
    for (const [id, stamp, marks, casting] of rows) {
      const text = headText({ stamp: String(stamp), marks: String(marks), casting: String(casting ?? '') })
      await run(`INSERT INTO "HeadText" ("headId", "text") VALUES (?, ?)`, [String(id), text])
    }
  })
  return rows.length
}

type Run = (sql: string, values: readonly string[]) => Promise<unknown>

/** Each of them whole or not at all; a start that was stopped half way carries on with the next one. */
async function inOneTransaction({ connection, provider }: Fill, work: (run: Run) => Promise<void>): Promise<void> {
  const transaction = await connection.startTransaction()
  const say = (sql: string) => transaction.executeRaw({ sql, args: [], argTypes: [] })
  try {
    await work((sql, values) =>
      transaction.executeRaw({
        sql: provider === 'sqlite' ? sql : numbered(sql),
        args: [...values],
        argTypes: values.map(() => ({ scalarType: 'string' as const, arity: 'scalar' as const })),
      }),
    )
    await say('COMMIT')
    await transaction.commit()
  } catch (error) {
    await say('ROLLBACK')
    await transaction.rollback()
    throw error
  }
}

function numbered(sql: string): string {
  let place = 0
  return sql.replaceAll('?', () => `$${++place}`)
}
