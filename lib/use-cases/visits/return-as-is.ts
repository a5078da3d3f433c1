import type { z } from 'zod'
import { allow } from '@/lib/core/access/can'
import type { Actor } from '@/lib/core/access/roles'
import { must } from '@/lib/core/errors'
import { write, type Moment } from '@/lib/data/write'
import { loadDossier } from '@/lib/dossier/dossier'
import { returnHead } from '@/lib/dossier/end-visit'
import type { returnAsIsSchema } from '@/lib/schemas/visit'

/** The other way out: a customer's property can always leave. The paper lists what was not done. */
export async function returnAsIs(actor: Actor, input: z.output<typeof returnAsIsSchema>, moment: Moment) {
  must(allow(actor, 'visit.return-as-is'))
  return write(actor, moment, async (ctx) => ({
    notDone: await returnHead(ctx, await loadDossier(ctx.tx, input.visitId), input.reason),
  }))
}
