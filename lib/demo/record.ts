import { stepTable } from '@/lib/core/route/steps'
import type { Station } from '@/lib/core/route/step-ids'
import { db } from '@/lib/data/db'
import { workingDay, shopTime } from './drive/clock'
import { demoShop } from './shop'
import { dayIn } from '@/lib/core/shop/calendar'

/** Working hours that a step took with the wait before it, from the shop's book of the time before: invented. */
const hoursAt: Readonly<Record<Station, readonly number[]>> = {
  'front-desk': [0.3, 0.5, 0.4, 1, 0.6, 2, 0.5, 0.8, 3, 0.4],
  wash: [1, 2, 1.5, 3, 2, 6, 1, 2.5, 4, 1.5],
  'measuring-bench': [1, 2, 3, 1.5, 7, 2, 4, 1, 2.5, 9],
  'flow-bench': [3, 4, 8, 2.5, 5, 3, 20, 4, 6, 3],
  'port-bench': [14, 20, 26, 12, 30, 18, 22, 35, 16, 24],
  'deck-mill': [2, 5, 3, 22, 4, 8, 3, 26, 6, 4],
  'intake-mill': [3, 4, 6, 2, 20, 5, 3, 8, 4, 6],
  'bolt-bench': [1, 2, 1.5, 3, 2, 5, 1, 2, 4, 1.5],
  'seat-machine': [4, 7, 5, 24, 6, 9, 5, 28, 8, 6],
  assembly: [2, 3, 5, 2.5, 20, 4, 3, 6, 2, 4],
  outside: [6, 20, 8, 26, 10, 7, 30, 9, 12, 8],
}

const hourMs = 60 * 60 * 1000

/**
 * What the shop had written down before it opened its books here: so long each step took, so that a finish is expected from
 * its own record.
 */
export async function seedRecord(opened: Date): Promise<void> {
  const zone = demoShop.timeZone
  const others = [
    { stepId: 'send', station: 'outside' as const },
    { stepId: 'release', station: 'front-desk' as const },
  ]
  const rows = [...stepTable, ...others].flatMap(({ stepId, station }, step) =>
    hoursAt[station].map((hours, number) => {
      const day = workingDay(dayIn(zone, opened), -3 - ((number * 4 + step) % 60))
      const doneAt = shopTime(zone, day, '16:00')
      const tookMs = Math.min(hours, 7) * hourMs
      // Longer than a day: begun on the working day before.
      const begun = hours <= 7 ? doneAt : shopTime(zone, workingDay(day, hours > 24 ? -2 : -1), '16:00')
      const readyAt = new Date(begun.getTime() - tookMs)
      return {
        ...{ visitId: `before ${number}`, stepId, occurrence: '', orderKey: '', doneAt, readyAt },
        station: step >= stepTable.length ? '' : station,
        // Half of it was its own work.
        freeAt: new Date((begun.getTime() + readyAt.getTime()) / 2),
      }
    }),
  )
  const once = new Map(rows.map((row) => [`${row.visitId} ${row.stepId}`, row]))
  await (await db()).stepTime.createMany({ data: [...once.values()] })
}
