import { seedDemo } from '@/lib/demo/seed'
import { filledDatabase, type TestDatabase } from './database'

/** A Sunday, the day the clocks change in the demo's zone: nothing may depend on a quiet date. */
export const demoMoment = new Date('2026-03-08T19:30:00Z')

/** The demo as it is told at that moment, in a database and folder of one's own. */
export async function filledDemo(): Promise<TestDatabase> {
  return (await filledDatabase('demo', () => seedDemo(demoMoment))).database
}
