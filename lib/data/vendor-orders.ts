import 'server-only'
import { headName } from '@/lib/core/shop/tag-number'
import { nextNumber } from './counters'
import type { Tx } from './db'
import { newId } from './ids'
import type { Write } from './write'

// What an order for outside work and an order for heads or parts have in common.

type OrderKind = 'outside' | 'supply'

const letters: Readonly<Record<OrderKind, string>> = { outside: 'O', supply: 'S' }

/** "O-0004", "S-0012": each kind counts by itself. */
export const nextOrderNumber = async (tx: Tx, kind: OrderKind): Promise<string> =>
  `${letters[kind]}-${String(await nextNumber(tx, `${kind}-order`)).padStart(4, '0')}`

export type Promised = { readonly orderId: string; readonly promisedOn: string; readonly note: string }

/** Every promise stays on record. */
export async function addPromise(ctx: Write, kind: OrderKind, promised: Promised): Promise<void> {
  const data = { id: newId(ctx.now), ...promised, at: ctx.now, byId: ctx.actor.personId }
  await (kind === 'outside' ? ctx.tx.outsidePromise.create({ data }) : ctx.tx.supplyPromise.create({ data }))
}

export type PromiseView = { readonly id: string; readonly on: string; readonly note: string }

export const promiseViews = (
  rows: readonly { readonly id: string; readonly promisedOn: string; readonly note: string }[],
): PromiseView[] => rows.map(({ id, promisedOn, note }) => ({ id, on: promisedOn, note }))

export const headOnOrder = {
  id: true,
  headId: true,
  position: true,
  jobId: true,
  job: { select: { number: true, promiseOn: true } },
  head: { select: { castingId: true, tags: { where: { to: null }, select: { number: true } } } },
} as const

type HeadRow = {
  readonly id: string
  readonly headId: string
  readonly position: number
  readonly job: { readonly number: string }
  readonly head: { readonly tags: readonly { readonly number: string }[] }
}

export type OrderedHead = {
  readonly visitId: string
  readonly headId: string
  /** Its place on the job while it wears none. */
  readonly tag: string
  readonly jobNumber: string
}

export const orderedHead = (visit: HeadRow): OrderedHead => ({
  visitId: visit.id,
  headId: visit.headId,
  tag: headName(visit.head.tags, visit.job.number, visit.position),
  jobNumber: visit.job.number,
})
