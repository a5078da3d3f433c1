import { stationName } from '../core/route/rules-words'
import type { RouteRules } from '../core/route/rules'
import type { WhyWaiting } from '../core/route/why-waiting'
import { dayWords, type WhenManner } from '../core/shop/when-words'

/** Where a head is and what is next, and what it waits for; '' where it waits for nothing. */
export type WhereAndWait = { readonly next: string; readonly waits: string }

/** In two cells of the counter's table. */
export function whereAndWait(why: WhyWaiting, rules: RouteRules, manner: WhenManner): WhereAndWait {
  const due = (day: string | null): string => (day === null ? ', no promise' : `, due ${dayWords(day, manner)}`)
  switch (why.code) {
    case 'not-here':
      return { next: 'not here yet', waits: '' }
    case 'not-ordered':
      return { next: 'on order', waits: 'not yet ordered' }
    case 'on-order':
      return { next: 'on order', waits: `${why.vendor}${due(why.promisedOn)}` }
    case 'held':
      return { next: 'held', waits: why.reason }
    case 'away':
      return { next: 'away', waits: `${why.vendor}${due(why.promisedOn)}` }
    case 'parts':
      return { next: 'waiting for parts', waits: `${why.what}${due(why.promisedOn)}` }
    case 'answer':
      return { next: 'waiting for an answer', waits: why.what }
    case 'step':
      return { next: `${why.label} (${stationName(why.station, rules).toLowerCase()})`, waits: '' }
    case 'place':
      return { next: placeNext[why.whereabouts] ?? why.whereabouts, waits: '' }
  }
}

const placeNext: Readonly<Partial<Record<string, string>>> = {
  finished: 'finished, to be released',
  released: 'ready to hand over',
  'returned as is': 'to hand over as it is',
}
