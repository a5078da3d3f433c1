import type { z } from 'zod'
import { allow, can } from '@/lib/core/access/can'
import type { Actor } from '@/lib/core/access/roles'
import { must, RefusedError } from '@/lib/core/errors'
import { minorAt } from '@/lib/core/money/price-of'
import type { RouteStep } from '@/lib/core/route/types'
import { addEvent, bumpVisit } from '@/lib/data/visits'
import { accountOf, lockAccount } from '@/lib/data/prices'
import { shopOf } from '@/lib/data/shop'
import { loadDossier, type Dossier } from '@/lib/dossier/dossier'
import { refreshRoute } from '@/lib/dossier/refresh'
import { write, type Moment, type Write } from '@/lib/data/write'
import type { handOverSchema } from '@/lib/schemas/release'
import { headLabel } from '@/lib/core/shop/tag-number'
import { addReadings, nothingConfirmed } from '@/lib/dossier/add-readings'
import { findStep } from '@/lib/dossier/find-step'
import { hrefOf } from '@/lib/dossier/where-to'
import { takeMoney } from '@/lib/dossier/money/take-money'
import { freezePaper } from '@/lib/papers/money-paper'
import { mayLeave } from './may-leave'

type Input = z.output<typeof handOverSchema>
type Head = Input['heads'][number]
type Going = Input & { readonly unpaidMinor: number }

/** `receiptId`: of the payment that was taken; null: none was. */
export type HandedOver = { readonly tags: readonly string[]; readonly receiptId: string | null }

const step = { stepId: 'hand-over', occurrence: '', orderId: null } as const

/** Heads leave with somebody: only what is released, or goes back as it is. All of them go, or none. */
export async function handOver(actor: Actor, input: Input, moment: Moment): Promise<HandedOver> {
  must(allow(actor, 'visit.hand-over'))
  const done = await write(actor, moment, async (ctx) => {
    await lockAccount(ctx.tx, input.jobId)
    const ready: Dossier[] = []
    for (const head of input.heads) ready.push(await readyToGo(ctx, input, head))
    const { receiptId, unpaidMinor } = await settle(ctx, input)
    for (const [at, head] of input.heads.entries()) await handOne(ctx, { ...input, unpaidMinor }, head, ready[at])
    return { tags: ready.map(({ visit }) => headLabel(visit)), receiptId }
  })
  if (done.receiptId !== null) await freezePaper(done.receiptId)
  return done
}

async function readyToGo(ctx: Write, { jobId }: Input, { visitId }: Head): Promise<Dossier> {
  const found = await loadDossier(ctx.tx, visitId)
  if (found.visit.jobId !== jobId) {
    throw new RefusedError({ code: 'not-found', message: 'That head is not on this job.' })
  }
  refuseNotReady(found.visit, headLabel(found.visit))
  return found
}

async function handOne(ctx: Write, input: Going, head: Head, found: Dossier | undefined): Promise<void> {
  if (!found) return
  const { visit, route } = found
  await bumpVisit(ctx.tx, visit)
  await answerAndTick(ctx, visit, findStep(route, step), input.takenBy, head)
  await ctx.tx.handOver.create({
    data: {
      visitId: visit.id,
      takenBy: input.takenBy,
      side: head.side,
      partsBack: head.partsBack,
      note: input.note,
      unpaidMinor: input.unpaidMinor,
      unpaidReason: input.unpaidMinor > 0 ? input.unpaidReason : '',
      at: ctx.now,
      byId: ctx.actor.personId,
    },
  })
  ctx.audit({
    action: 'visit.hand-over',
    subjectId: visit.id,
    visitId: visit.id,
    jobId: visit.jobId,
    changes: {
      side: head.side,
      partsBack: head.partsBack,
      ...(input.unpaidMinor > 0 ? { unpaidMinor: input.unpaidMinor, unpaidReason: input.unpaidReason } : {}),
    },
  })
  await refreshRoute(ctx.tx, visit.id, ctx.now)
}

/** Takes what is paid now. With something left to pay no head goes, unless the owner lets it go and says why. */
async function settle(ctx: Write, { jobId, payment, unpaidReason }: Input) {
  const { amount, ...paidBy } = payment
  let receiptId: string | null = null
  if (amount !== '') {
    const minor = minorAt(amount, await shopOf(ctx.tx), 'payment.amount')
    receiptId = (await takeMoney(ctx, jobId, { ...paidBy, kind: 'payment', minor, fields: atPayment })).receiptId
  }
  const unpaidMinor = Math.max(0, (await accountOf(ctx.tx, jobId)).dueMinor)
  if (unpaidMinor === 0) return { receiptId, unpaidMinor }
  if (unpaidReason === '') throw unpaid('payment.amount', 'The job is not paid in full. Take the payment first.')
  if (!can(ctx.actor, 'visit.hand-over-unpaid')) {
    throw unpaid('unpaidReason', 'Only the owner may hand over a job that is not paid in full.')
  }
  return { receiptId, unpaidMinor }
}

const atPayment = { amount: 'payment.amount', confirmed: 'payment.confirmed' }

const unpaid = (field: string, message: string): RefusedError =>
  new RefusedError({ code: 'wrong-state', message, fields: { [field]: message } })

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
