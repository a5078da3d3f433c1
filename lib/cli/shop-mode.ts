import type { PrismaClient } from '@/prisma/generated/sqlite/client'
import { rowsIfThere } from './connection'

export type Mode = 'demo' | 'shop'

const commands: Readonly<Record<Mode, string>> = { demo: 'npm start', shop: 'npm run shop' }

/** What the database was made for; null when there is none yet, or nothing in it. Read before anything is migrated. */
async function modeOf(url: string): Promise<string | null> {
  const [row] = await rowsIfThere(url, 'SELECT mode FROM "Shop"')
  return row ? String(row[0]) : null
}

/** A demo is never run as a shop, nor a shop as a demo. */
export async function refuseOtherMode(url: string, mode: Mode, where: string): Promise<void> {
  const made = await modeOf(url)
  if (made === null || made === mode) return
  const other: Mode = mode === 'demo' ? 'shop' : 'demo'
  throw new Error(
    `${where} holds ${made === 'demo' ? 'the demo' : 'a real shop'}: start it with ${commands[other]}, ` +
      `or name another folder with BRASSTAG_DATA.`,
  )
}

/** Writes the mode into a database that has none; the rest of the row is filled in when the shop is set up. */
export async function writeMode(client: PrismaClient, mode: Mode, now: Date): Promise<void> {
  if (await client.shop.findUnique({ where: { id: 1 } })) return
  await client.shop.create({
    data: {
      id: 1,
      mode,
      name: '',
      address: '',
      phone: '',
      timeZone: 'UTC',
      locale: 'en-US',
      currency: 'USD',
      currencyExponent: 2,
      paper: 'letter',
      createdAt: now,
    },
  })
}
