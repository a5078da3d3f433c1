import { allow } from '@/lib/core/access/can'
import { must } from '@/lib/core/errors'
import { exportCustomers } from '@/lib/use-cases/customers/export-customers'
import { csvAnswer } from '@/lib/web/csv-answer'
import { refuseUnlessAsked, requireActor } from '@/lib/web/require-actor'

/** All customers as a file. */
export const GET = (request: Request): Promise<Response> =>
  csvAnswer(request, async () => {
    const actor = await requireActor()
    must(allow(actor, 'customer.export'))
    await refuseUnlessAsked('exportCustomers')
    return exportCustomers(actor, { now: new Date() })
  })
