import { chamberShapeOf } from '@/lib/core/casting/chamber-shape'
import { allow } from '@/lib/core/access/can'
import { sees } from '@/lib/core/access/fields'
import type { Actor } from '@/lib/core/access/roles'
import { must, RefusedError } from '@/lib/core/errors'
import type { BenchCasting } from '@/lib/core/options/question-of'
import { benchCasting } from '@/lib/data/bench'
import { db, type Reader } from '@/lib/data/db'
import { castingFactsOf } from '@/lib/data/known-figures'
import { currentSettings } from '@/lib/data/settings'
import { learnedRecord, shownRate } from '@/lib/dossier/casting-rate'
import type { ShopSettings } from '@/lib/core/shop/settings'
import { earlierFlowOf } from './earlier-flow'

/** One casting, for somebody who picks another in the middle of a question. */
export async function seeBenchCasting(actor: Actor, castingId: string): Promise<BenchCasting> {
  must(allow(actor, 'cut-bench.see'))
  const client = await db()
  const found = await castingOnBench(
    client,
    castingId,
    (await currentSettings(client)).values,
    sees(actor, 'supply cost'),
  )
  if (found) return found
  throw new RefusedError({ code: 'not-found', message: 'Casting not found.' })
}

/** `withCost`: what a bought head costs; never in an answer to somebody who may not see it. */
export async function castingOnBench(
  reader: Reader,
  castingId: string,
  settings: ShopSettings,
  withCost: boolean,
): Promise<BenchCasting | null> {
  const casting = await benchCasting(reader, castingId)
  if (!casting) return null
  const facts = castingFactsOf(casting, 'as-cast')
  const asked = { castingId, form: 'as-cast', facts, depthThou: null, settings }
  const rate = shownRate(await learnedRecord(reader, asked))
  return {
    id: casting.id,
    name: casting.name,
    chambers: casting.chamberCount,
    chamberShape: chamberShapeOf(casting.chamberShape),
    deepEdge: casting.deepEdge === 'intake' ? 'intake' : 'exhaust',
    facts,
    learned: rate.cuts === 0 ? null : { thouPerCc: rate.thouPerCc, words: rate.words, proven: rate.proven },
    flowed: await earlierFlowOf(reader, casting.id, settings.flowRepeatabilityPart),
    variants: casting.variants.map(({ id, name, nominalCc, supply, cutByMaker, leadDays, costMinor }) => ({
      id,
      name,
      nominalCc,
      supply: supply === 'stock' ? 'stock' : 'special',
      cutByMaker,
      leadDays,
      costMinor: withCost ? costMinor : null,
    })),
  }
}
