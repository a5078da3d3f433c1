import { setTimeout as pause } from 'node:timers/promises'
import { isDriverAdapterError } from '@prisma/driver-adapter-utils'

const longestWaitMs = 15_000
const shortestPauseMs = 5
const longestPauseMs = 200

/**
 * Another program holds the file (a copy being made, somebody's tool): tries again with growing pauses, for a quarter of a
 * minute. SQLite's own waiting is a synchronous call, in which the server answers nobody.
 */
export async function whenFree<T>(work: () => Promise<T>, waitMs = longestWaitMs): Promise<T> {
  const until = performance.now() + waitMs
  for (let pauseMs = shortestPauseMs; ; pauseMs = Math.min(2 * pauseMs, longestPauseMs)) {
    try {
      return await work()
    } catch (error) {
      if (!isLocked(error) || performance.now() + pauseMs > until) throw error
    }
    await pause(pauseMs)
  }
}

const isLocked = (error: unknown): boolean =>
  isDriverAdapterError(error) && error.cause.originalCode?.startsWith('SQLITE_BUSY') === true
