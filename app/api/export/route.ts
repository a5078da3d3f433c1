import { allow } from '@/lib/core/access/can'
import { must } from '@/lib/core/errors'
import { takeEverything } from '@/lib/use-cases/export/take-everything'
import { fileAnswer } from '@/lib/web/file-answer'
import { refuseUnlessAsked, requireActor } from '@/lib/web/require-actor'

export const dynamic = 'force-dynamic'

/** Everything of the shop as one archive, streamed. */
export const GET = (request: Request): Promise<Response> =>
  fileAnswer(request, async () => {
    const actor = await requireActor()
    must(allow(actor, 'export.take'))
    await refuseUnlessAsked('takeEverything')
    const { name, archive } = await takeEverything(actor, { now: new Date() })
    return { name, type: 'application/gzip', body: archive }
  })
