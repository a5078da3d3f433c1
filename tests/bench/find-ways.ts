import { openClient, closeClient } from '@/lib/data/client'
import { demoStaff } from '@/lib/demo/shop'
import { findAnything } from '@/lib/use-cases/find/find-anything'
import { databaseMs } from '../setup/database-time'
import { ways } from '../setup/find-ways'
import { median } from './measure'

/** What the database takes for each of the thirty ways to ask Find, said as [what was asked, milliseconds], in JSON. */
await openClient()
const { tamsin } = await demoStaff()
const turns = 7
const took: [string, number][] = []
for (const [q] of ways) {
  const times: number[] = []
  for (let turn = 0; turn < turns; turn += 1) times.push(await databaseMs('sqlite', () => findAnything(tamsin, { q })))
  took.push([q, median(times)])
}
process.stdout.write(JSON.stringify(took))
await closeClient()
