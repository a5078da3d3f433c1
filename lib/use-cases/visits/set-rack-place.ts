import type { z } from 'zod'
import { allow } from '@/lib/core/access/can'
import type { Actor } from '@/lib/core/access/roles'
import { must, RefusedError } from '@/lib/core/errors'
import { bumpVisit, visitById } from '@/lib/data/visits'
import { write, type Moment } from '@/lib/data/write'
import { refuseClosed } from '@/lib/dossier/refuse-closed'
import type { setRackPlaceSchema } from '@/lib/schemas/visit'

type Input = z.output<typeof setRackPlaceSchema>

/** Says where a head lies now: for whoever carried it there. A released head is still moved about; one that left is not. */
export async function setRackPlace(
  actor: Actor,
  { visitId, rackPlace, was }: Input,
  moment: Moment,
): Promise<{ rackPlace: string }> {
  must(allow(actor, 'visit.rack'))
  return write(actor, moment, async (ctx) => {
    const visit = await visitById(ctx.tx, visitId)
    refuseClosed(visit)
    if (visit.rackPlace === rackPlace) return { rackPlace }
    if (visit.rackPlace !== was) refuseMoved(visit.rackPlace)
    await bumpVisit(ctx.tx, visit)
    await ctx.tx.visit.update({ where: { id: visitId }, data: { rackPlace } })
    ctx.audit({
      action: 'visit.rack',
      subjectId: visitId,
      jobId: visit.jobId,
      visitId,
      changes: { rackPlace: [visit.rackPlace, rackPlace] },
    })
    return { rackPlace }
  })
}

function refuseMoved(now: string): never {
  const place = now === '' ? 'took the rack location out' : `moved this head to ${now}`
  const message = `Someone else ${place}. Look where it lies and enter it again.`
  throw new RefusedError({ code: 'conflict', message, fields: { rackPlace: message } })
}
