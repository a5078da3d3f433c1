import { exportCustomers } from '@/lib/use-cases/customers/export-customers'
import { csvAnswer } from '@/lib/web/csv-answer'
import { requireActor } from '@/lib/web/require-actor'

/** All customers as a file. */
export const GET = (): Promise<Response> =>
  csvAnswer(async () => exportCustomers(await requireActor(), { now: new Date() }))
