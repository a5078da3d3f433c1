import { allow } from '@/lib/core/access/can'
import type { Actor } from '@/lib/core/access/roles'
import { must, RefusedError } from '@/lib/core/errors'
import { jobById } from '@/lib/data/jobs'
import type { VisitRecord } from '@/lib/data/visit-records'
import { isOnOrder } from '@/lib/dossier/route-facts'
import { newId } from '@/lib/data/ids'
import { shopOf } from '@/lib/data/shop'
import { addSupplyLine, bringsHead, bringsParts, promiseSupply, variantInUse } from '@/lib/data/supply'
import { nextOrderNumber } from '@/lib/data/vendor-orders'
import { vendorInUse } from '@/lib/data/vendors'
import { bumpVisit, visitById } from '@/lib/data/visits'
import { refreshRoute } from '@/lib/dossier/refresh'
import { bumpWait, waitById } from '@/lib/data/waits'
import { write, type Moment, type Write } from '@/lib/data/write'
import type { OrderSupply } from '@/lib/schemas/supply'
import { minorAt } from '@/lib/core/money/price-of'
import { headLabel } from '@/lib/core/shop/tag-number'
import { refuseClosed } from '@/lib/dossier/refuse-closed'

const wrong = (field: string, message: string): never => {
  throw new RefusedError({ code: 'invalid', message, fields: { [field]: message } })
}

/** Orders heads and parts from one supplier. A head is bought once, and parts are ordered once for a wait. */
export async function orderSupply(
  actor: Actor,
  input: OrderSupply,
  moment: Moment,
): Promise<{ orderId: string; number: string }> {
  must(allow(actor, 'supply.order'))
  if ([...input.heads, ...input.parts].some((line) => line.cost !== '')) must(allow(actor, 'supply.cost'))
  return write(actor, moment, async (ctx) => {
    const vendor = await vendorInUse(ctx.tx, input.vendorId)
    if (!vendor) return wrong('vendorId', 'This supplier is no longer in use. Pick another.')
    if (input.jobId !== null) await jobById(ctx.tx, input.jobId)
    const id = newId(ctx.now)
    const number = await nextOrderNumber(ctx.tx, 'supply')
    const { jobId, promisedOn, note } = input
    await ctx.tx.supplyOrder.create({
      data: {
        id,
        number,
        vendorId: vendor.id,
        jobId,
        note,
        promisedOn,
        createdAt: ctx.now,
        byId: actor.personId,
      },
    })
    const shop = await shopOf(ctx.tx)
    const costOf = (cost: string, field: string) => (cost === '' ? null : minorAt(cost, shop, field))
    for (const [at, line] of input.heads.entries()) {
      await orderHeads(ctx, { id, number }, line, costOf(line.cost, `heads.${at}.cost`), `heads.${at}`)
    }
    for (const [at, line] of input.parts.entries()) {
      await orderParts(ctx, { id, number }, line, costOf(line.cost, `parts.${at}.cost`), `parts.${at}`)
    }
    if (promisedOn) await promiseSupply(ctx, { orderId: id, promisedOn, note: 'at ordering' }, vendor)
    ctx.audit({
      action: 'supply-order.order',
      subjectId: id,
      ...(jobId === null ? {} : { jobId }),
      changes: {
        number,
        vendorId: vendor.id,
        promisedOn,
        heads: input.heads.length,
        parts: input.parts.length,
      },
    })
    return { orderId: id, number }
  })
}

type Order = { readonly id: string; readonly number: string }

async function orderHeads(
  ctx: Write,
  order: Order,
  line: OrderSupply['heads'][number],
  costMinor: number | null,
  field: string,
): Promise<void> {
  const variant = line.variantId === '' ? null : await variantOf(ctx, line.variantId, `${field}.variantId`)
  const visits: VisitRecord[] = []
  for (const visitId of line.visitIds) {
    const visit = await visitById(ctx.tx, visitId)
    await refuseNotToBuy(ctx, visit, `${field}.visitIds`)
    if (variant && variant.castingId !== visit.head.castingId) {
      wrong(`${field}.variantId`, `${variant.name} is a different casting from ${headLabel(visit)}.`)
    }
    if (visits.some((other) => other.id === visit.id)) wrong(`${field}.visitIds`, 'A head is picked twice.')
    visits.push(visit)
  }
  await addSupplyLine(ctx, order.id, {
    kind: 'head',
    what: line.what || (variant?.name ?? ''),
    variantId: variant?.id ?? null,
    waitId: null,
    quantity: visits.length,
    costMinor,
    visitIds: line.visitIds,
  })
  for (const visit of visits) await markOrdered(ctx, order, visit, variant)
}

type Variant = Awaited<ReturnType<typeof variantOf>>

async function variantOf(ctx: Write, variantId: string, field: string) {
  const variant = await variantInUse(ctx.tx, variantId)
  return variant ?? wrong(field, 'This choice is no longer available. Pick another.')
}

async function refuseNotToBuy(ctx: Write, visit: VisitRecord, field: string): Promise<void> {
  refuseClosed(visit)
  const name = headLabel(visit)
  if (visit.source === 'customer') wrong(field, `${name} belongs to the customer. Take it off the order.`)
  if (!isOnOrder(visit)) wrong(field, `${name} is already here.`)
  const brings = await bringsHead(ctx.tx, visit.id)
  if (brings !== null) wrong(field, `${name} is already on supply order ${brings}.`)
}

/** What is known of a head that is still to come is what its maker says: the nominal volume, until it is measured. */
async function markOrdered(ctx: Write, order: Order, visit: VisitRecord, variant: Variant | null): Promise<void> {
  await bumpVisit(ctx.tx, visit)
  const takesNominal = visit.presentCc === null && variant !== null && variant.nominalCc !== null
  if (takesNominal) {
    await ctx.tx.visit.update({
      where: { id: visit.id },
      data: { presentCc: variant.nominalCc, presentText: variant.nominalText, presentUnit: 'cc' },
    })
  }
  ctx.audit({
    action: 'visit.order-head',
    subjectId: visit.id,
    visitId: visit.id,
    jobId: visit.jobId,
    changes: {
      order: order.number,
      variantId: variant?.id ?? null,
      ...(takesNominal ? { presentCc: variant.nominalCc } : {}),
    },
  })
  await refreshRoute(ctx.tx, visit.id, ctx.now)
}

async function orderParts(
  ctx: Write,
  order: Order,
  line: OrderSupply['parts'][number],
  costMinor: number | null,
  field: string,
): Promise<void> {
  const waitId = line.waitId === '' ? null : line.waitId
  if (waitId !== null) {
    const wait = await waitById(ctx.tx, waitId)
    if (wait.arrivedAt) wrong(`${field}.waitId`, 'These parts are no longer needed.')
    const brings = await bringsParts(ctx.tx, waitId)
    if (brings !== null) wrong(`${field}.waitId`, `These parts are already on supply order ${brings}.`)
    await bumpWait(ctx, waitId, wait.version)
  }
  const { what, quantity } = line
  await addSupplyLine(ctx, order.id, {
    kind: 'part',
    what,
    variantId: null,
    waitId,
    quantity,
    costMinor,
    visitIds: [],
  })
}
