import type { CutFacts } from '@/lib/core/rate/shop-cut'
import type { ShopSettings } from '@/lib/core/shop/settings'
import { effectiveReadings } from '@/lib/data/facts'
import { castingFactsOf } from '@/lib/data/known-figures'
import type { VisitWithRoute } from '@/lib/data/visits'

/** What a visit's readings and events say of its cuts. */
export function cutFactsOf(
  { visit, facts }: Pick<VisitWithRoute, 'visit' | 'facts'>,
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
