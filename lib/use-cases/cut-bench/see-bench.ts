import { allow } from '@/lib/core/access/can'
import type { Actor } from '@/lib/core/access/roles'
import type { CastingFacts } from '@/lib/core/casting/figures'
import { must } from '@/lib/core/errors'
import type { ShopSettings } from '@/lib/core/shop/settings'
import { db } from '@/lib/data/db'
import { castingFactsOf } from '@/lib/data/known-figures'
import { currentSettings } from '@/lib/data/settings'

export type BenchCasting = {
  readonly id: string
  readonly name: string
  readonly deepEdge: 'intake' | 'exhaust'
  readonly facts: CastingFacts
}

/** What the cut bench works with: the castings on record, as they are cast, and the shop's limits. */
export async function seeBench(
  actor: Actor,
): Promise<{ readonly castings: readonly BenchCasting[]; readonly settings: ShopSettings }> {
  must(allow(actor, 'cut-bench.see'))
  const client = await db()
  const castings = await client.castingRecord.findMany({
    where: { retiredAt: null },
    include: { figures: true },
    orderBy: { name: 'asc' },
  })
  return {
    castings: castings.map((casting) => ({
      id: casting.id,
      name: casting.name,
      deepEdge: casting.deepEdge === 'intake' ? 'intake' : 'exhaust',
      facts: castingFactsOf(casting, 'as-cast'),
    })),
    settings: (await currentSettings(client)).values,
  }
}
