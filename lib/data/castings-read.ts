import 'server-only'
import { chamberShapeOf } from '@/lib/core/casting/chamber-shape'
import { firstPicks, type PickAsked } from '@/lib/core/find/pick'
import { typedFigure } from '@/lib/core/units/typed-figure'
import type { Reader } from './db'
import { mapPage, pageOfRows, rowsOfPage, type Paged } from './paging'

export type CastingPick = {
  readonly id: string
  readonly name: string
  /** '60.0 cc'; '' when it is not on record. */
  readonly nominal: string
  readonly isFlatDeck: boolean
}

/** Casting records in use, by name: the first hundred of those asked for. */
export async function castingPicks(reader: Reader, asked: PickAsked = firstPicks): Promise<Paged<CastingPick>> {
  const named =
    'ids' in asked
      ? { id: { in: [...asked.ids] } }
      : { AND: asked.words.map((word) => ({ nameLower: { contains: word } })) }
  const found = await reader.castingRecord.findMany({
    where: { retiredAt: null, ...named },
    select: {
      ...{ id: true, name: true, chamberShape: true },
      figures: { where: { key: 'nominalCc' }, select: { text: true, unit: true } },
    },
    orderBy: [{ nameLower: 'asc' }, { id: 'asc' }],
    ...rowsOfPage(1),
  })
  return mapPage(pageOfRows(found), ({ id, name, chamberShape, figures: [nominal] }) => ({
    ...{ id, name, nominal: nominal ? typedFigure(nominal) : '' },
    isFlatDeck: chamberShapeOf(chamberShape) === 'flat-deck',
  }))
}

/** Those of the ids whose valves sit in a flat face: they hold no cc, and none is asked of them. */
export async function flatDeckCastings(reader: Reader, ids: readonly string[]): Promise<ReadonlySet<string>> {
  const rows = await reader.castingRecord.findMany({
    where: { id: { in: [...new Set(ids)] }, chamberShape: 'flat-deck' },
    select: { id: true },
  })
  return new Set(rows.map((row) => row.id))
}

/** Those of the ids that are on record, with their material. */
export async function castingMaterials(reader: Reader, ids: readonly string[]): Promise<Map<string, string>> {
  const rows = await reader.castingRecord.findMany({
    where: { id: { in: [...new Set(ids)] } },
    select: { id: true, material: true },
  })
  return new Map(rows.map((row) => [row.id, row.material]))
}
