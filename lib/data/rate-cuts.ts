import 'server-only'
import { shopCutOf, type CutFacts, type ShopCut } from '@/lib/core/rate/shop-cut'
import type { RouteFacts } from '@/lib/core/route/types'
import type { ShopSettings } from '@/lib/core/shop/settings'
import type { Prisma, ShopCut as ShopCutRow } from '@/prisma/generated/sqlite/client'
import type { Reader, Tx } from './db'
import { effectiveReadings, type VisitRecord } from './facts'
import { castingFactsOf } from './known-figures'
import { currentSettings } from './settings'

/** What a rate is learned from at the most: older cuts add nothing that these do not say. */
const newest = 40

type CutVisit = { readonly visit: VisitRecord; readonly facts: RouteFacts }

/** Rewrites what this visit's cuts took, from its facts; a visit that was not cut has no row. */
export async function projectShopCut(tx: Tx, { visit, facts }: CutVisit): Promise<void> {
  const { casting } = visit.head
  if (!casting || !mayBeCut(facts)) return
  const cut = shopCutOf(cutFactsOf({ visit, facts }, (await currentSettings(tx)).values))
  if (!cut) {
    await tx.shopCut.deleteMany({ where: { visitId: visit.id } })
    return
  }
  const data = rowOf(cut)
  await tx.shopCut.upsert({
    where: { visitId: visit.id },
    create: { visitId: visit.id, castingId: casting.id, form: visit.head.chamberForm, ...data },
    update: data,
  })
}

/** What a visit's readings and events say of its cuts. */
export function cutFactsOf(
  { visit, facts }: CutVisit,
  settings: Pick<ShopSettings, 'buretteDivisionCc' | 'ccRepeatabilityCc'>,
): CutFacts {
  const { casting, chamberForm } = visit.head
  const { milledWidthIn, deckLengthIn } = castingFactsOf(casting, chamberForm)
  return {
    readings: effectiveReadings(visit.readings),
    events: facts.events,
    orders: facts.orders,
    deck: { deepEdge: casting?.deepEdge === 'intake' ? 'intake' : 'exhaust', milledWidthIn, deckLengthIn },
    burette: { divisionCc: settings.buretteDivisionCc, repeatabilityCc: settings.ccRepeatabilityCc },
  }
}

/** Whether it is worth asking: most changes are of heads that no cutter has touched. */
const mayBeCut = ({ readings, events, orders }: RouteFacts): boolean =>
  readings.some(({ step }) => step.stepId === 'flat-cut' || step.stepId === 'angle-cut') ||
  events.some(({ step }) => step?.stepId === 'flat-cut' || step?.stepId === 'angle-cut') ||
  orders.some((order) => order.receivedSeq !== null)

const rowOf = ({ seq, edges, before, after, whyNot }: ShopCut) => ({
  seq,
  shallowIn: edges?.shallowIn ?? null,
  deepIn: edges?.deepIn ?? null,
  beforeCc: before?.cc ?? null,
  uBeforeCc: before?.uCc ?? null,
  afterCc: after?.cc ?? null,
  uAfterCc: after?.uCc ?? null,
  whyNot,
})

function cutOf(row: ShopCutRow): ShopCut {
  const { seq, shallowIn, deepIn, beforeCc, uBeforeCc, afterCc, uAfterCc, whyNot } = row
  return {
    seq,
    edges: shallowIn === null || deepIn === null ? null : { shallowIn, deepIn },
    before: beforeCc === null || uBeforeCc === null ? null : { cc: beforeCc, uCc: uBeforeCc },
    after: afterCc === null || uAfterCc === null ? null : { cc: afterCc, uCc: uAfterCc },
    whyNot,
  }
}

/** The newest cuts of one casting and chamber form, oldest first; without those of the visit at hand. */
export async function newestShopCuts(
  reader: Reader,
  castingId: string,
  form: string,
  exceptVisitId?: string,
): Promise<ShopCut[]> {
  const rows = await reader.shopCut.findMany({
    where: { castingId, form, ...(exceptVisitId === undefined ? {} : { visitId: { not: exceptVisitId } }) },
    orderBy: { seq: 'desc' },
    take: newest,
  })
  return rows.map(cutOf).reverse()
}

const named = {
  visit: {
    select: {
      headId: true,
      head: { select: { tags: { select: { number: true }, orderBy: { from: 'desc' }, take: 1 } } },
      job: { select: { number: true } },
    },
  },
} as const satisfies Prisma.ShopCutInclude

export type NamedCut = {
  readonly visitId: string
  readonly headId: string
  readonly tag: string
  readonly jobNumber: string
  readonly cut: ShopCut
}

/** The same with the heads and jobs they were made on, newest first. */
export async function namedShopCuts(reader: Reader, castingId: string, form: string): Promise<NamedCut[]> {
  const rows = await reader.shopCut.findMany({
    where: { castingId, form },
    orderBy: { seq: 'desc' },
    take: newest,
    include: named,
  })
  return rows.map((row) => ({
    visitId: row.visitId,
    headId: row.visit.headId,
    tag: row.visit.head.tags[0]?.number ?? '',
    jobNumber: row.visit.job.number,
    cut: cutOf(row),
  }))
}
