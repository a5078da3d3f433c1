import type { CutFacts } from '@/lib/core/rate/shop-cut'
import type { Dossier } from './dossier'
import { deckOf } from './route-facts'

/** What a visit's readings and events say of its cuts. */
export const cutFactsOf = ({
  visit,
  casting,
  readings,
  facts,
  settings,
  ownRepeats,
  otherRepeats,
}: Dossier): CutFacts => ({
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
