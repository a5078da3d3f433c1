import { cpSync, mkdirSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { migrate } from '@/lib/cli/migrate'
import { sessionSecret } from '@/lib/cli/settings.mjs'
import { closeClient, openClient } from '@/lib/data/client'
import { seedDemo } from '@/lib/demo/seed'
import { demoStaff } from '@/lib/demo/shop'
import { dataFolder, databaseUrlOfProcess } from '@/lib/env'
import { addCastingSchema } from '@/lib/schemas/casting'
import { addCasting } from '@/lib/use-cases/castings/add-casting'
import { prepareHeads } from './prepared-heads'
import { uncutWedges, wedgeFigures } from './wedge'

/**
 * Fills a folder for the browser tests, before a server starts on it: `demo`, with the castings that they cut and heads
 * that stand ready; `spare`, the same shop without those heads; and `prepared.json`, which heads stand ready.
 */
const folder = process.argv[2] ?? ''
const [demo, spare] = [join(folder, 'demo'), join(folder, 'spare')]
mkdirSync(demo, { recursive: true })
process.env.BRASSTAG_DATA = demo
delete process.env.DATABASE_URL
process.env.NEXTAUTH_SECRET = sessionSecret({ folder: dataFolder() })
await migrate(databaseUrlOfProcess())
await openClient()
const now = new Date()
await seedDemo(now)
const staff = await demoStaff()
for (const name of uncutWedges) {
  const casting = {
    ...{ name, material: 'aluminium', chamberCount: '4', chamberShape: 'open', deepEdge: 'exhaust', note: '' },
    ...{ figures: { ...wedgeFigures, machined: {}, opened: {} }, bolts: [], variants: [] },
  }
  await addCasting(staff.orla, addCastingSchema.parse(casting), { now })
}
await closeClient()
cpSync(demo, spare, { recursive: true })
await openClient()
writeFileSync(join(folder, 'prepared.json'), JSON.stringify(await prepareHeads(staff, now)))
await closeClient()
