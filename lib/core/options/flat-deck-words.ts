import type { FlatDeckAfter, ValveAfter } from '../flat-deck/after-cut'
import type { MakerLimits } from '../flat-deck/maker-limits'
import { formatThou } from '../units/format-figure'

const inches = (valueIn: number): string => `${valueIn.toFixed(4)} in`.replace('-', '−')

/** "engine maker 0.0240 to 0.0400 in"; "no limit of the engine maker on record". */
export function makerLimitsWords({ leastIn, mostIn }: MakerLimits): string {
  if (leastIn === null && mostIn === null) return 'no limit of the engine maker on record'
  if (mostIn === null) return `engine maker’s minimum ${inches(leastIn ?? 0)}`
  if (leastIn === null) return `engine maker’s maximum ${inches(mostIn)}`
  return `engine maker ${leastIn.toFixed(4).replace('-', '−')} to ${inches(mostIn)}`
}

const proud = (valueIn: number): string => (valueIn < 0 ? ', proud' : '')

/** "0.0280 in, was 0.0400"; a valve that would stand out of the deck says so. */
export const beforeAfterWords = (beforeIn: number, afterIn: number): string =>
  `${inches(afterIn)}${proud(afterIn)}, was ${beforeIn.toFixed(4).replace('-', '−')}`

/** What seat work must sink a valve beyond what is planned, in inches; null: no seat work reaches the least depth. */
export const sinkMoreOf = ({ sinkMoreIn }: ValveAfter): number | null => (sinkMoreIn.ok ? sinkMoreIn.value : null)

/** "sink its seat 3 thou more"; '' when there is nothing to do. */
export function sinkMoreWords(sinkMoreIn: number | null): string {
  if (sinkMoreIn === null) return 'no seat work reaches it'
  return sinkMoreIn > 0 ? `sink its seat ${formatThou(sinkMoreIn)} more` : ''
}

/** What stands beside a valve: the limits, and what to do where it is past them. */
export function valveNote(valve: ValveAfter): string {
  const { state, byIn } = valve.judged
  const limits = makerLimitsWords(valve.limits)
  if (state === 'under')
    return [`under by ${formatThou(byIn)}`, limits, sinkMoreWords(sinkMoreOf(valve))].filter(Boolean).join('; ')
  return state === 'over' ? `over by ${formatThou(byIn)}; ${limits}` : limits
}

/** What stands beside an injector: the limits, and by how much it is past them. */
export function injectorNote({ judged, limits }: FlatDeckAfter['injectors'][number]): string {
  const words = makerLimitsWords(limits)
  if (judged.state === 'under') return `under by ${formatThou(judged.byIn)}; ${words}`
  return judged.state === 'over' ? `over by ${formatThou(judged.byIn)}; ${words}` : words
}
