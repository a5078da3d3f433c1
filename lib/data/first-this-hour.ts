import 'server-only'
import type { Db } from './db'
import { faultOf } from './faults'

const hourMs = 60 * 60 * 1000

/**
 * Of several processes that find the same work due, true for the one that asks first in an hour. Where it cannot be written
 * down it is true for all: twice is better than not at all.
 */
export async function isFirstThisHour(client: Db, work: string, now: Date): Promise<boolean> {
  const hour = Math.floor(now.getTime() / hourMs)
  const name = `hour of ${work}`
  try {
    const other = { name, NOT: { value: hour } }
    const { count } = await client.counter.updateMany({ where: other, data: { value: hour } })
    if (count === 0) await client.counter.create({ data: { name, value: hour } })
    return true
  } catch (error) {
    const fault = faultOf(error)
    if (fault === null) throw error
    return fault !== 'taken'
  }
}
