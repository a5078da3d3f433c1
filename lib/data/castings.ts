import 'server-only'
import { RefusedError } from '@/lib/core/errors'
import type { Prisma } from '@/prisma/generated/sqlite/client'
import type { Reader, Tx } from './db'
import { newId } from './ids'
import { inUseFirst, pageOfRows, rowsOfPage, type Paged } from './paging'

const castingInclude = {
  figures: true,
  outlines: true,
  bolts: true,
  variants: { where: { retiredAt: null }, orderBy: { name: 'asc' } },
} as const satisfies Prisma.CastingRecordInclude

export type CastingRow = Prisma.CastingRecordGetPayload<{ include: typeof castingInclude }>

export async function castingById(reader: Reader, id: string): Promise<CastingRow> {
  const casting = await reader.castingRecord.findUnique({ where: { id }, include: castingInclude })
  if (!casting) throw new RefusedError({ code: 'not-found', message: 'There is no such casting record here.' })
  return { ...casting, bolts: casting.bolts.toSorted(byLabel) }
}

/** Made once: a collator takes a hundred times as long to make as to ask. */
const asPeopleCount = new Intl.Collator('en', { numeric: true })

/** As a person counts: bolt 2 before bolt 10. */
export const byLabel = (a: { label: string }, b: { label: string }): number => asPeopleCount.compare(a.label, b.label)

/** A page of them by name with what stands on record, those in use first. */
export const listCastings = async (reader: Reader, page: number): Promise<Paged<CastingRow>> =>
  pageOfRows(
    await reader.castingRecord.findMany({
      include: castingInclude,
      orderBy: [inUseFirst, { nameLower: 'asc' }, { id: 'asc' }],
      ...rowsOfPage(page),
    }),
  )

export type CastingFacts = Pick<CastingRow, 'name' | 'material' | 'chamberCount' | 'chamberShape' | 'deepEdge' | 'note'>
type Own<Row> = Omit<Row, 'id' | 'castingId' | 'retiredAt'>
export type FigureRow = Own<CastingRow['figures'][number]>
export type OutlineRow = Own<CastingRow['outlines'][number]>
export type BoltRow = Own<CastingRow['bolts'][number]>
/** `id` is null for one that is new. */
export type VariantRow = Own<CastingRow['variants'][number]> & { readonly id: string | null }
export type CastingParts = {
  readonly figures: readonly FigureRow[]
  readonly outlines: readonly OutlineRow[]
  readonly bolts: readonly BoltRow[]
  readonly variants: readonly VariantRow[]
}

/** Brings a casting's figures, outlines, bolts and variants to what they are to be. The audit keeps what they were. */
export async function putCastingParts(
  tx: Tx,
  castingId: string,
  { figures, outlines, bolts, variants }: CastingParts,
  now: Date,
): Promise<void> {
  const own = <T extends object>(row: T) => ({ id: newId(now), castingId, ...row })
  await tx.castingFigure.deleteMany({ where: { castingId } })
  await tx.castingFigure.createMany({ data: figures.map(own) })
  await tx.castingOutline.deleteMany({ where: { castingId } })
  await tx.castingOutline.createMany({ data: outlines.map(own) })
  await tx.castingBolt.deleteMany({ where: { castingId } })
  await tx.castingBolt.createMany({ data: bolts.map(own) })
  await putVariants(tx, castingId, variants, now)
}

/** Variants may stand on a supply order, so they are kept: changed in place, or retired when taken off the list. */
async function putVariants(tx: Tx, castingId: string, variants: readonly VariantRow[], now: Date) {
  const kept = variants.flatMap(({ id }) => (id === null ? [] : [id]))
  await tx.castingVariant.updateMany({
    where: { castingId, id: { notIn: kept }, retiredAt: null },
    data: { retiredAt: now },
  })
  for (const { id, ...data } of variants) {
    if (id === null) await tx.castingVariant.create({ data: { id: newId(now), castingId, ...data } })
    else await tx.castingVariant.updateMany({ where: { id, castingId }, data })
  }
}
