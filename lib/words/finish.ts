import type { Finish, FinishStepId, Longest } from '../core/finish/types'
import { stationName } from '../core/route/rules-words'
import type { RouteRules } from '../core/route/rules'
import { tableOf } from '../core/route/table'
import { daysText } from '../core/shop/when-words'

const stepName = (stepId: FinishStepId, rules: RouteRules): string => {
  if (stepId === 'send') return 'sending out'
  if (stepId === 'release') return 'release'
  return (
    tableOf(rules)
      .rows.find(({ ref }) => ref === stepId)
      ?.label.toLowerCase() ?? stepId
  )
}

const about = (days: number): string => {
  const whole = Math.max(1, Math.round(days))
  return `about ${daysText(whole)}`
}

/** What takes the most time, for staff: "at Slant and True Milling, about 5 days". */
export function longestText(longest: Longest, rules: RouteRules): string {
  switch (longest.code) {
    case 'none':
      return ''
    case 'step':
      return `${stepName(longest.stepId, rules)}, ${about(longest.days)}`
    case 'queue':
      return `${longest.heads} before it at the ${stationName(longest.station, rules).toLowerCase()}, ${about(longest.days)}`
    case 'vendor':
      return `at ${longest.vendor === '' ? 'the vendor' : longest.vendor}, ${about(longest.days)}`
    case 'parts':
      return `waiting for ${longest.what}, ${about(longest.days)}`
    case 'answer':
      return `waiting for the customer’s answer, ${about(longest.days)}`
    case 'hold':
      return `on hold: ${longest.what}, ${about(longest.days)}`
    case 'bought':
      return `head on order${longest.what === '' ? '' : ` from ${longest.what}`}, ${about(longest.days)}`
  }
}

/** The same for a customer: what it waits for, and nothing of the shop's inside. */
export function longestForCustomer(longest: Longest): string {
  switch (longest.code) {
    case 'vendor':
      return 'The longest wait is for work that another shop does for us.'
    case 'parts':
      return 'The longest wait is for parts.'
    case 'answer':
      return 'It waits for your answer.'
    case 'bought':
      return 'The longest wait is for a head that we ordered.'
    default:
      return ''
  }
}

/** What the days are drawn from. */
export const basisText = (from: Finish['from']): string =>
  ({ own: 'from this shop’s own record', both: 'partly from settings', settings: 'from settings' })[from]
