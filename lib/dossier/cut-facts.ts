import type { CastingFacts } from '@/lib/core/casting/figures'
import type { OwnRepeats } from '@/lib/core/chamber/burette'
import type { RepeatTally } from '@/lib/core/chamber/repeatability'
import type { CutFacts } from '@/lib/core/rate/shop-cut'
import type { EffectiveReading } from '@/lib/core/readings/effective'
import type { RouteFacts } from '@/lib/core/route/types'
import type { ShopSettings } from '@/lib/core/shop/settings'
import type { VisitRecord } from '@/lib/data/visit-records'
import { deckOf } from './route-facts'

/** As much of a dossier as its cuts are told by. */
type CutParts = {
  readonly visit: VisitRecord
  readonly casting: CastingFacts
  readonly readings: readonly EffectiveReading[]
  readonly facts: Pick<RouteFacts, 'events' | 'orders'>
  readonly settings: ShopSettings
  readonly ownRepeats: readonly OwnRepeats[]
  readonly otherRepeats: RepeatTally
}

/** What a visit's readings and events say of its cuts. */
export const cutFactsOf = ({
  visit,
  casting,
  readings,
  facts,
  settings,
  ownRepeats,
  otherRepeats,
}: CutParts): CutFacts => ({
  readings,
  events: facts.events,
  orders: facts.orders,
  deck: deckOf(visit, casting, settings),
  burette: {
    divisionCc: settings.buretteDivisionCc,
    repeatabilityCc: settings.ccRepeatabilityCc,
    others: otherRepeats,
    own: ownRepeats,
  },
})
