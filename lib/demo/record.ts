import { stepTable } from '@/lib/core/route/steps'
import type { Station } from '@/lib/core/route/step-ids'
import { db } from '@/lib/data/db'
import { workingDay, shopTime } from './drive/clock'
import { demoShop } from './shop'
import { dayIn } from '@/lib/core/shop/calendar'

/** Working hours that a step took with the wait before it, from the shop's book of the time before: invented. */
const hoursAt: Readonly<Record<Station, readonly number[]>> = {
  'front-desk': [0.3, 0.2, 0.4, 0.3, 0.6, 0.5, 0.2, 0.8, 1, 0.4],
  wash: [0.5, 1, 0.7, 1.5, 1, 2, 0.5, 1.2, 1.8, 0.8],
  'measuring-bench': [0.5, 1, 1.5, 0.8, 3, 1, 2, 0.5, 1.2, 4],
  'flow-bench': [2, 3, 4, 1.5, 3, 2, 20, 3, 4, 2],
  'port-bench': [6, 20, 7, 5, 26, 6, 20, 7, 6, 20],
  'deck-mill': [1, 2, 1.5, 4, 2, 3, 1, 20, 2, 1.5],
  'intake-mill': [1.5, 2, 3, 1, 4, 2, 1.5, 3, 2, 3],
  'bolt-bench': [0.5, 1, 0.7, 1.5, 1, 2, 0.5, 1, 2, 0.8],
  'seat-machine': [2, 4, 3, 20, 3, 5, 2, 6, 4, 3],
  assembly: [1, 1.5, 2, 1, 4, 2, 1.5, 3, 1, 2],
  outside: [6, 20, 5, 20, 6, 7, 20, 5, 7, 4],
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
