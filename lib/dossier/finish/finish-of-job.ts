import type { Finish } from '@/lib/core/finish/types'
import type { Whereabouts } from '@/lib/core/route/types'
import type { Reader } from '@/lib/data/db'
import type { Dossier } from '../dossier'
import { whereaboutsOf } from '../whereabouts-of'
import { finishesOf, isAtRisk, latestOf } from './finishes'

export type JobFinish = { readonly finish: Finish; readonly atRisk: boolean }

const ready: readonly Whereabouts[] = ['released', 'handed over', 'returned as is', 'scrapped', 'taken off']

/** When the last head of a job will be ready; null: all of them are, or have left. One statement at the most. */
export async function finishOfJob(
  reader: Reader,
  heads: readonly Dossier[],
  { now, timeZone }: { readonly now: Date; readonly timeZone: string },
): Promise<JobFinish | null> {
  const open = heads
    .map((head) => ({ head, whereabouts: whereaboutsOf(head) }))
    .filter(({ whereabouts }) => !ready.includes(whereabouts))
  const [first] = open
  if (!first) return null
  const asked = open.map(({ head: { visit }, whereabouts }) => ({
    ...{ id: visit.id, whereabouts, bookedAt: visit.createdAt },
    ...{ urgent: visit.job.urgent, promiseOn: visit.job.promiseOn },
  }))
  const { of } = await finishesOf(reader, asked, { now, timeZone, settings: first.head.today.values })
  const finish = latestOf([...of.values()])
  return finish && { finish, atRisk: isAtRisk(finish, first.head.visit.job.promiseOn) }
}
