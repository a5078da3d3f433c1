import type { z } from 'zod'
import { allow } from '@/lib/core/access/can'
import type { Actor } from '@/lib/core/access/roles'
import { must, RefusedError } from '@/lib/core/errors'
import type { RouteStep } from '@/lib/core/route/types'
import { addEvent, bumpVisit } from '@/lib/data/visits'
import { loadDossier, type Dossier } from '@/lib/dossier/dossier'
import { refreshRoute } from '@/lib/dossier/refresh'
import { write, type Moment, type Write } from '@/lib/data/write'
import type { handOverSchema } from '@/lib/schemas/release'
import { headLabel } from '@/lib/core/shop/tag-number'
import { addReadings, nothingConfirmed } from '@/lib/dossier/add-readings'
import { findStep } from '@/lib/dossier/find-step'
import { hrefOf } from '@/lib/dossier/where-to'
import { mayLeave } from './may-leave'

type Input = z.output<typeof handOverSchema>
type Head = Input['heads'][number]

const step = { stepId: 'hand-over', occurrence: '', orderId: null } as const

/** Heads leave with somebody: only what is released, or goes back as it is. All of them go, or none. */
export async function handOver(actor: Actor, input: Input, moment: Moment): Promise<{ tags: readonly string[] }> {
  must(allow(actor, 'visit.hand-over'))
  return write(actor, moment, async (ctx) => {
    const tags: string[] = []
    for (const head of input.heads) tags.push(await handOne(ctx, input, head))
    return { tags }
  })
}

async function handOne(ctx: Write, input: Input, head: Head): Promise<string> {
  const found = await loadDossier(ctx.tx, head.visitId)
  const { visit, route } = found
  const tag = headLabel(visit)
  if (visit.jobId !== input.jobId)
    throw new RefusedError({ code: 'not-found', message: 'That head is not on this job.' })
  refuseNotReady(visit, tag)
  await bumpVisit(ctx.tx, visit)
  await answerAndTick(ctx, visit, findStep(route, step), input.takenBy, head)
  await ctx.tx.handOver.create({
    data: {
      visitId: visit.id,
      takenBy: input.takenBy,
      side: head.side,
      partsBack: head.partsBack,
      note: input.note,
      at: ctx.now,
      byId: ctx.actor.personId,
    },
  })
  ctx.audit({
    action: 'visit.hand-over',
    subjectId: visit.id,
    visitId: visit.id,
    jobId: visit.jobId,
    changes: { side: head.side, partsBack: head.partsBack },
  })
  await refreshRoute(ctx.tx, visit.id, ctx.now)
  return tag
}

type Visit = Dossier['visit']

function refuseNotReady(visit: Visit, tag: string): void {
  const refused = (message: string) =>
    new RefusedError({
      code: 'wrong-state',
      message,
      gaps: [{ message: `See ${tag}`, href: hrefOf(visit, { kind: 'head' }) }],
    })
  if (visit.handOver) throw refused(`${tag} is already handed over.`)
  if (!mayLeave(visit)) {
    throw refused(`${tag} is not released. Release it first, or return it as is.`)
  }
}

/** The step's own answers, in the same rows as at any station, and its tick. */
async function answerAndTick(ctx: Write, visit: Visit, at: RouteStep, takenBy: string, head: Head): Promise<void> {
  const answer = (kind: 'taken-by' | 'side' | 'parts-returned', text: string) => ({
    kind,
    point: '',
    text,
    notTaken: null,
  })
  const readings = [
    answer('taken-by', takenBy),
    answer('side', head.side),
    answer('parts-returned', head.partsBack === '' ? 'nothing' : head.partsBack),
  ]
  await addReadings(ctx, visit, at, { readings, instrumentId: null, conditions: {}, takenAt: null }, nothingConfirmed)
  await addEvent(ctx, visit.id, 'tick', at)
}
