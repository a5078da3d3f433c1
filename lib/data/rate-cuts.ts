import 'server-only'
import type { ShopCut } from '@/lib/core/rate/shop-cut'
import type { Prisma, ShopCut as ShopCutRow } from '@/prisma/generated/sqlite/client'
import type { Reader } from './db'

/** What a rate is learned from at the most: older cuts add nothing that these do not say. */
const newest = 40

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
