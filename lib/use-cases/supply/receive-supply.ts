import { allow } from '@/lib/core/access/can'
import type { Actor } from '@/lib/core/access/roles'
import { must, RefusedError } from '@/lib/core/errors'
import { bumpSupply, isAllHere, supplyById, type SupplyRecord } from '@/lib/data/supply'
import { assignTag } from '@/lib/data/tags'
import { bumpVisit, visitById } from '@/lib/data/visits'
import { refreshRoute } from '@/lib/dossier/refresh'
import { waitById } from '@/lib/data/waits'
import { endPartsWait } from '@/lib/dossier/end-parts-wait'
import { conflictUnless, write, type Moment, type Write } from '@/lib/data/write'
import type { ReceiveSupply } from '@/lib/schemas/supply'

export type ArrivedHead = {
  readonly headId: string
  readonly tag: string
  readonly jobNumber: string
  /** Its job was pulled while it was on order: it lies here for another. */
  readonly free: boolean
}
export type ReceivedSupply = {
  readonly number: string
  readonly heads: readonly ArrivedHead[]
  readonly all: boolean
}

const gone = ['returned as is', 'handed over', 'scrapped', 'taken off']

/**
 * What a supplier sent is here, all of it or part. A head gets its tag there and then, also one whose job was pulled in
 * the meantime: it is here, and must have a name. Parts end the wait they were ordered for when all of them have come.
 */
export async function receiveSupply(actor: Actor, input: ReceiveSupply, moment: Moment): Promise<ReceivedSupply> {
  must(allow(actor, 'supply.receive'))
  return write(actor, moment, async (ctx) => {
    const order = await supplyById(ctx.tx, input.orderId)
    await bumpSupply(ctx, order, input.version)
    const heads: ArrivedHead[] = []
    for (const [at, head] of input.heads.entries()) heads.push(await receiveHead(ctx, order, head, `heads.${at}`))
    for (const [at, part] of input.parts.entries()) await receiveParts(ctx, order, part, `parts.${at}`)
    const all = await isAllHere(ctx.tx, order.id)
    if (all) await ctx.tx.supplyOrder.update({ where: { id: order.id }, data: { arrivedAt: ctx.now } })
    ctx.audit({
      action: 'supply-order.receive',
      subjectId: order.id,
      ...(order.jobId === null ? {} : { jobId: order.jobId }),
      changes: { number: order.number, tags: heads.map((head) => head.tag), parts: input.parts, all },
    })
    return { number: order.number, heads, all }
  })
}

async function receiveHead(
  ctx: Write,
  order: SupplyRecord,
  { visitId, tag: typed }: ReceiveSupply['heads'][number],
  field: string,
): Promise<ArrivedHead> {
  const line = order.lines.find((candidate) => candidate.heads.some((head) => head.visitId === visitId))
  if (!line) throw new RefusedError({ code: 'not-found', message: `That head is not on ${order.number}.` })
  const changed = await ctx.tx.supplyHead.updateMany({
    where: { lineId: line.id, visitId, arrivedAt: null },
    data: { arrivedAt: ctx.now },
  })
  conflictUnless(changed, 'the arrival of this head')
  await ctx.tx.supplyLine.update({ where: { id: line.id }, data: { arrived: { increment: 1 } } })
  const visit = await visitById(ctx.tx, visitId)
  const tag = await assignTag(ctx, visit.headId, typed, `${field}.tag`)
  await bumpVisit(ctx.tx, visit)
  ctx.audit({
    action: 'visit.arrive',
    subjectId: visit.id,
    visitId: visit.id,
    jobId: visit.jobId,
    changes: { order: order.number, tag },
  })
  const { visit: now } = await refreshRoute(ctx.tx, visit.id, ctx.now)
  const free = gone.includes(now.place?.whereabouts ?? '')
  return { headId: visit.headId, tag, jobNumber: visit.job.number, free }
}

async function receiveParts(
  ctx: Write,
  order: SupplyRecord,
  { lineId, quantity }: ReceiveSupply['parts'][number],
  field: string,
): Promise<void> {
  const line = order.lines.find((candidate) => candidate.id === lineId && candidate.kind === 'part')
  if (!line) throw new RefusedError({ code: 'not-found', message: `That line is not on ${order.number}.` })
  const out = line.quantity - line.arrived
  if (quantity > out) {
    const message =
      out === 0 ? `All ${line.what} are already received.` : `Only ${out} of ${line.what} are still on order.`
    throw new RefusedError({ code: 'invalid', message, fields: { [`${field}.quantity`]: message } })
  }
  await ctx.tx.supplyLine.update({ where: { id: line.id }, data: { arrived: { increment: quantity } } })
  if (quantity === out && line.waitId !== null) await endWaitOf(ctx, line.waitId)
}

/** Somebody may have ended the wait by hand before. */
async function endWaitOf(ctx: Write, waitId: string): Promise<void> {
  const wait = await waitById(ctx.tx, waitId)
  if (wait.arrivedAt === null) await endPartsWait(ctx, wait, wait.version)
}
