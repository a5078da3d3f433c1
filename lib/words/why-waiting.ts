import { stationName } from '../core/route/rules-words'
import type { RouteRules } from '../core/route/rules'
import type { WhyWaiting } from '../core/route/why-waiting'
import { dayWords } from '../core/shop/when-words'

const promised = (day: string | null, locale: string): string =>
  day ? `, promised ${dayWords(day, { locale })}` : ', no promise'

/** The sentence in two: what only says again where the head is, and what goes on from there. */
function partsOf(why: WhyWaiting, rules: RouteRules, locale: string): readonly [where: string, more: string] {
  switch (why.code) {
    case 'not-here':
      return ['', 'not here yet']
    case 'not-ordered':
      return ['', 'not yet ordered']
    case 'on-order':
      return ['on order', ` from ${why.vendor}${promised(why.promisedOn, locale)}`]
    case 'held':
      return ['held', `: ${why.reason}`]
    case 'away':
      return ['away', ` at ${why.vendor}${promised(why.promisedOn, locale)}`]
    case 'parts':
      return ['', `waiting for ${why.what}${promised(why.promisedOn, locale)}`]
    case 'answer':
      return ['', `waiting for the customer’s answer: ${why.what}`]
    case 'step':
      return ['', `${why.label} (${stationName(why.station, rules).toLowerCase()})`]
    case 'place':
      return [why.whereabouts, '']
  }
}

/** "waiting for springs, promised Mar 4, 2026"; stations by the names in these rules. */
export const whyWaitingText = (why: WhyWaiting, rules: RouteRules, locale: string): string =>
  partsOf(why, rules, locale).join('')

/** What stands behind where the head is: "held" goes on with ": bent stud", "in house" with ", Chambers (bench)". */
export function afterWhereText(why: WhyWaiting, rules: RouteRules, locale: string): string {
  const [where, more] = partsOf(why, rules, locale)
  return where === '' ? `, ${more}` : more
}
