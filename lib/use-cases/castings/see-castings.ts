import { allow } from '@/lib/core/access/can'
import { sees } from '@/lib/core/access/fields'
import type { Actor } from '@/lib/core/access/roles'
import { must } from '@/lib/core/errors'
import { typedWantedKeys } from '@/lib/core/wanted/figures'
import { lastChange, type LastChange } from '@/lib/data/audit-trail'
import { castingById, listCastings, type CastingRow } from '@/lib/data/castings'
import { db } from '@/lib/data/db'
import { mapPage, type Paged } from '@/lib/data/paging'
import { wantedOnCasting } from '@/lib/data/stored/wanted'
import { wantedForm, type WantedForm } from '@/lib/schemas/wanted'
import { wantedWordsOf, type WantedWords } from '@/lib/words/wanted'

export type CastingSeen = {
  readonly id: string
  readonly name: string
  readonly material: string
  readonly chamberCount: number
  readonly chamberShape: string
  readonly deepEdge: string
  readonly note: string
  readonly retired: boolean
  readonly version: number
  /** What benches work to on such heads, as typed and as lines. */
  readonly wanted: WantedWords & { readonly own: WantedForm }
  readonly figures: readonly {
    readonly form: string
    readonly key: string
    readonly value: number
    readonly text: string
    readonly unit: string
  }[]
  /** The openings that were traced, as typed. */
  readonly outlines: readonly { readonly form: string; readonly points: string }[]
  readonly bolts: readonly {
    readonly label: string
    readonly xIn: number | null
    readonly yIn: number | null
    readonly diameterIn: number | null
    readonly boltIn: number | null
    readonly lengthIn: number | null
    readonly blind: boolean
    readonly threadLeftIn: number | null
  }[]
  readonly variants: readonly {
    readonly variantId: string
    readonly name: string
    readonly nominalText: string
    readonly supply: string
    readonly cutByMaker: boolean
    readonly leadDays: number | null
    readonly costMinor: number | null
  }[]
}

function seen(row: CastingRow, actor: Actor): CastingSeen {
  const { id, name, material, chamberCount, chamberShape, deepEdge, note, version } = row
  const facts = { id, name, material, chamberCount, chamberShape, deepEdge, note, version }
  return {
    ...facts,
    retired: row.retiredAt !== null,
    figures: row.figures.map(({ form, key, value, text, unit }) => ({ form, key, value, text, unit })),
    wanted: wantedOnRecord(row),
    outlines: row.outlines.map(({ form, points }) => ({ form, points })),
    bolts: row.bolts.map(boltSeen),
    variants: row.variants.map((variant) => variantSeen(variant, sees(actor, 'supply cost'))),
  }
}

function wantedOnRecord({ wanted, id }: CastingRow): CastingSeen['wanted'] {
  const casting = wantedOnCasting.read(wanted, id)
  return { own: wantedForm(typedWantedKeys, casting), ...wantedWordsOf(casting) }
}

function boltSeen(row: CastingRow['bolts'][number]): CastingSeen['bolts'][number] {
  const { label, xIn, yIn, diameterIn, boltIn, lengthIn, blind, threadLeftIn } = row
  return { label, xIn, yIn, diameterIn, boltIn, lengthIn, blind, threadLeftIn }
}

function variantSeen(row: CastingRow['variants'][number], withCost: boolean): CastingSeen['variants'][number] {
  const { id: variantId, name, nominalText, supply, cutByMaker, leadDays, costMinor } = row
  const facts = { variantId, name, nominalText, supply, cutByMaker, leadDays }
  return { ...facts, costMinor: withCost ? costMinor : null }
}

export async function seeCastings(actor: Actor, page = 1): Promise<Paged<CastingSeen>> {
  must(allow(actor, 'casting.see'))
  return mapPage(await listCastings(await db(), page), (row) => seen(row, actor))
}

export async function seeCasting(
  actor: Actor,
  castingId: string,
): Promise<{ casting: CastingSeen; last: LastChange | null }> {
  must(allow(actor, 'casting.see'))
  const client = await db()
  const casting = await castingById(client, castingId)
  return { casting: seen(casting, actor), last: await lastChange(client, 'casting', castingId) }
}
