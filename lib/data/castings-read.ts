import 'server-only'
import type { Reader } from './db'

/** Casting records that can be booked, by name. */
export async function castingChoices(reader: Reader) {
  return reader.castingRecord.findMany({
    where: { retiredAt: null },
    select: {
      id: true,
      name: true,
      material: true,
      chamberCount: true,
      chamberShape: true,
      figures: { where: { key: 'nominalCc' }, select: { form: true, text: true, unit: true } },
    },
    orderBy: { nameLower: 'asc' },
  })
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
