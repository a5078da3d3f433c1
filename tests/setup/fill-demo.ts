import { cpSync } from 'node:fs'
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

/** Fills a data folder with the demo, and the castings that the browser tests cut, before a server starts on it. */
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
// The same shop once more, without what stands ready for the tests of the first.
const [spare] = process.argv.slice(2)
if (spare) {
  await closeClient()
  cpSync(dataFolder(), spare, { recursive: true })
  await openClient()
}
// The one thing that it says: whoever started it reads which heads stand ready.
process.stdout.write(JSON.stringify(await prepareHeads(staff, now)))
await closeClient()
