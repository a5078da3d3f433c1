import { allow } from '@/lib/core/access/can'
import { must } from '@/lib/core/errors'
import { exportCustomers } from '@/lib/use-cases/customers/export-customers'
import { fileAnswer, tableFile } from '@/lib/web/file-answer'
import { refuseUnlessAsked, requireActor } from '@/lib/web/require-actor'

/** All customers as a file. */
export const GET = (request: Request): Promise<Response> =>
  fileAnswer(request, async () => {
    const actor = await requireActor()
    must(allow(actor, 'customer.export'))
    await refuseUnlessAsked('exportCustomers')
    return tableFile(await exportCustomers(actor, { now: new Date() }))
  })
