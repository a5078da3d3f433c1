import 'server-only'
import type { Ruling } from '@/lib/core/rate/screen'
import type { DepthBy, ShopCut } from '@/lib/core/rate/shop-cut'
import type { Prisma, ShopCut as ShopCutRow } from '@/prisma/generated/sqlite/client'
import type { Reader, Tx } from './db'

/** What a rate is learned from at the most: older cuts add nothing that these do not say. */
const newest = 40

/** What one visit's cuts took, with what was asked and decided about it. */
export type KeptCut = {
  readonly visitId: string
  readonly headId: string
  readonly cut: ShopCut
  readonly lastPassAt: Date | null
  /** It was asked about, and its figures are the same still. */
  readonly questioned: boolean
  readonly ruling: Ruling | null
  readonly rulingReason: string
  readonly rulingById: string | null
  readonly rulingAt: Date | null
}

function keptCutOf(row: ShopCutRow): KeptCut {
  const { visitId, headId, lastPassAt, questionedAt, ruling, rulingReason, rulingById, rulingAt } = row
  return {
    visitId,
    headId,
    cut: cutOf(row),
    lastPassAt,
    questioned: questionedAt !== null,
    ruling: ruling === 'count' || ruling === 'leave-out' ? ruling : null,
    rulingReason,
    rulingById,
    rulingAt,
  }
}

function cutOf(row: ShopCutRow): ShopCut {
  const { seq, shallowIn, deepIn, depthBy, beforeCc, uBeforeCc, afterCc, uAfterCc, chambers, whyNot } = row
  return {
    seq,
    edges: shallowIn === null || deepIn === null ? null : { shallowIn, deepIn },
    depthBy: depthBy as DepthBy,
    before: beforeCc === null || uBeforeCc === null ? null : { cc: beforeCc, uCc: uBeforeCc },
    after: afterCc === null || uAfterCc === null ? null : { cc: afterCc, uCc: uAfterCc },
    chambers: chambers.split(',').filter(Boolean),
    whyNot,
  }
}

/** By the day of the last pass; one whose day is not kept stands before all others. */
const byDay = (a: ShopCutRow, b: ShopCutRow): number =>
  (a.lastPassAt?.getTime() ?? 0) - (b.lastPassAt?.getTime() ?? 0) || a.seq - b.seq

/** The newest cuts of one casting and chamber form, by the day of the last pass, oldest first; without one visit's. */
export async function newestShopCuts(
  reader: Reader,
  castingId: string,
  form: string,
  exceptVisitId?: string,
): Promise<KeptCut[]> {
  const rows = await reader.shopCut.findMany({
    where: { castingId, form, ...(exceptVisitId === undefined ? {} : { visitId: { not: exceptVisitId } }) },
    orderBy: { seq: 'desc' },
    take: newest,
  })
  return rows.toSorted(byDay).map(keptCutOf)
}

/** What the cuts of these visits say; a visit that was not cut has none. */
export async function shopCutsOfVisits(reader: Reader, visitIds: readonly string[]): Promise<KeptCut[]> {
  const rows = await reader.shopCut.findMany({ where: { visitId: { in: [...visitIds] } } })
  return rows.map(keptCutOf)
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

export type NamedCut = KeptCut & { readonly tag: string; readonly jobNumber: string }

/** The same with the heads and jobs they were made on, oldest first. */
export async function namedShopCuts(reader: Reader, castingId: string, form: string): Promise<NamedCut[]> {
  const rows = await reader.shopCut.findMany({
    where: { castingId, form },
    orderBy: { seq: 'desc' },
    take: newest,
    include: named,
  })
  return rows.toSorted(byDay).map((row) => ({
    ...keptCutOf(row),
    headId: row.visit.headId,
    tag: row.visit.head.tags[0]?.number ?? '',
    jobNumber: row.visit.job.number,
  }))
}

/** The figures of a cut as one text: what a question was asked about. */
const figuresOf = ({ edges, before, after }: ShopCut): string =>
  [edges?.shallowIn, edges?.deepIn, before?.cc, after?.cc].map((value) => value?.toFixed(6) ?? '').join(' ')

type Kept = {
  readonly castingId: string
  readonly form: string
  readonly headId: string
  readonly lastPassAt: Date | null
}

/** Keeps what a visit's cuts took. What the owner decided stays; a question about other figures is answered by them. */
export async function keepShopCut(tx: Tx, visitId: string, cut: ShopCut | null, kept: Kept): Promise<void> {
  if (!cut) {
    await tx.shopCut.deleteMany({ where: { visitId } })
    return
  }
  const data = { ...rowOf(cut), lastPassAt: kept.lastPassAt }
  await tx.shopCut.upsert({ where: { visitId }, create: { visitId, ...kept, ...data }, update: data })
  await tx.shopCut.updateMany({
    where: { visitId, questionedAt: { not: null }, questioned: { not: figuresOf(cut) } },
    data: { questionedAt: null, questioned: '' },
  })
}

const rowOf = ({ seq, edges, depthBy, before, after, chambers, whyNot }: ShopCut) => ({
  seq,
  shallowIn: edges?.shallowIn ?? null,
  deepIn: edges?.deepIn ?? null,
  depthBy,
  beforeCc: before?.cc ?? null,
  uBeforeCc: before?.uCc ?? null,
  afterCc: after?.cc ?? null,
  uAfterCc: after?.uCc ?? null,
  chambers: chambers.join(','),
  whyNot,
})

/** A question once raised stands: it is kept with the figures it was asked about. */
export async function raiseQuestion(tx: Tx, { visitId, cut }: KeptCut, now: Date): Promise<void> {
  await tx.shopCut.updateMany({
    where: { visitId, questionedAt: null },
    data: { questionedAt: now, questioned: figuresOf(cut) },
  })
}
