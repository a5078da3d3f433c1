import type { FlatDeckAfter, ValveAfter } from '../flat-deck/after-cut'
import type { MakerLimits } from '../flat-deck/maker-limits'
import type { FlatDeckHeadPlan } from '../flat-deck/plan-of-heads'
import { pointLabel } from '../readings/points'
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

const sinkWords = ({ sinkMoreIn }: ValveAfter): string => {
  if (!sinkMoreIn.ok) return 'no seat work reaches it'
  return sinkMoreIn.value > 0 ? `sink its seat ${formatThou(sinkMoreIn.value)} more` : ''
}

/** What stands beside a valve: the limits, and what to do where it is past them. */
export function valveNote(valve: ValveAfter): string {
  const { state, byIn } = valve.judged
  const limits = makerLimitsWords(valve.limits)
  if (state === 'under') return [`under by ${formatThou(byIn)}`, limits, sinkWords(valve)].filter(Boolean).join('; ')
  return state === 'over' ? `over by ${formatThou(byIn)}; ${limits}` : limits
}

/** What stands beside an injector: the limits, and by how much it is past them. */
export function injectorNote({ judged, limits }: FlatDeckAfter['injectors'][number]): string {
  const words = makerLimitsWords(limits)
  if (judged.state === 'under') return `under by ${formatThou(judged.byIn)}; ${words}`
  return judged.state === 'over' ? `over by ${formatThou(judged.byIn)}; ${words}` : words
}

/** What must be said before anybody agrees to the cut: only what passes a limit, or has none. */
export function flatDeckCautions(heads: readonly FlatDeckHeadPlan[], cutIn: number): string[] {
  return heads.flatMap((head) => [
    ...valvesPast(head, 'under'),
    ...valvesPast(head, 'over'),
    ...injectorsPast(head),
    ...notRead(head),
    ...ownDepth(head, cutIn),
    ...tooDeep(head),
  ])
}

function valvesPast({ tag, after }: FlatDeckHeadPlan, state: 'under' | 'over'): string[] {
  const past = (after?.valves ?? []).filter(({ judged }) => judged.state === state)
  const worst = past.toSorted((a, b) => b.judged.byIn - a.judged.byIn)[0]
  if (!worst) return []
  const others = past.length > 1 ? ` (${past.length} valves are past it, this one most)` : ''
  const where = worst.afterIn < 0 ? `stand ${inches(-worst.afterIn)} proud of` : `lie ${inches(worst.afterIn)} below`
  const limitIn = state === 'under' ? worst.limits.leastIn : worst.limits.mostIn
  const end = `${state} the engine maker’s ${state === 'under' ? 'minimum' : 'maximum'} of ${inches(limitIn ?? 0)}`
  const todo = state === 'under' ? `: ${sinkWords(worst)}, or cut less` : ': new seats or valves, as the maker says'
  return [`${tag}, ${pointLabel(worst.valve)}: the valve would ${where} the deck, ${end}${others}${todo}.`]
}

function injectorsPast({ tag, after }: FlatDeckHeadPlan): string[] {
  return (after?.injectors ?? [])
    .filter(({ judged }) => judged.state === 'under' || judged.state === 'over')
    .map(({ chamber, afterIn, judged: { state }, limits }) => {
      const limitIn = (state === 'under' ? limits.leastIn : limits.mostIn) ?? 0
      const end = `${state} the engine maker’s ${state === 'under' ? 'minimum' : 'maximum'} of ${inches(limitIn)}`
      return `${tag}, chamber ${chamber}: the injector would stand ${inches(afterIn)} out of the deck, ${end}: change its washer, as the maker says, or cut less.`
    })
}

function notRead({ tag, after, needs }: FlatDeckHeadPlan): string[] {
  if (needs !== '') return [`${tag}: valves and injectors after the cut are not known. ${needs}`]
  if (!after || after.valves.length === 0) {
    return [`${tag}: how deep its valves lie is not read yet. Read it before the cut.`]
  }
  const bare = after.valves.some(({ judged }) => judged.state === 'no-limit')
  return bare
    ? [`${tag}: the engine maker’s limits for its valves are not on the casting record. Enter them before the cut.`]
    : []
}

/** Nothing is past a limit yet, and a clean-up may go deeper than was meant. */
/** Heads of a pair are cut to one thickness, not by one depth. */
const ownDepth = ({ tag, depthIn }: FlatDeckHeadPlan, cutIn: number): string[] =>
  Math.abs(depthIn - cutIn) < 0.00005
    ? []
    : [`${tag} is thicker: it is cut ${formatThou(depthIn)} to the same thickness.`]

function tooDeep({ tag, deepest, after, depthIn }: FlatDeckHeadPlan): string[] {
  if (!deepest || deepest.depthIn >= depthIn - 1e-9 || (after?.valves ?? []).length === 0) return []
  const bound = { recession: 'the valve of', protrusion: 'the injector of chamber', thickness: 'the thickness' }[
    deepest.boundBy
  ]
  const place = deepest.point === '' ? '' : ` ${pointLabel(deepest.point).replace(/^chamber (\d+)$/, '$1')}`
  return [`${tag}: without seat work no deeper than ${formatThou(deepest.depthIn)}, by ${bound}${place}.`]
}
