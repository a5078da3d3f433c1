import { formatThou } from '../units/format-figure'
import type { Consequences } from './consequences'
import { groundWords } from './ground-words'
import { ports, type Port } from './valve-consequences'

type Least = {
  readonly ptvLeastIn: Readonly<Record<Port, number>>
  readonly sealingMarginIn?: number
  /** Its seats lie in the deck itself: what counts is how deep the valves lie. */
  readonly flatDeck?: object | null
}

/** What of a cut's consequences must be said before anybody agrees to it: only what passes a limit. */
export function cutCautions(follows: Consequences, least: Least): string[] {
  return [
    ...ports.flatMap((port) => clearanceCaution(follows, port, least.ptvLeastIn[port])),
    ...(least.flatDeck ? [] : ports).flatMap((port) => sealingCaution(follows, port, least.sealingMarginIn ?? 0)),
    ...(follows.boltReach.ok && follows.boltReach.value.bottoms
      ? [
          `The bolts would bottom in their blind holes by ${formatThou(-follows.boltReach.value.leftIn)}: shorter bolts or deeper threads, as the maker of the engine says.`,
        ]
      : []),
    ...(follows.dowelFit.ok && follows.dowelFit.value.bottoms
      ? ['The dowels would bottom in their holes: the holes must be deepened, or the head will not seat.']
      : []),
  ]
}

function clearanceCaution(follows: Consequences, port: Port, leastIn: number): string[] {
  const found = follows[port].pistonToValve
  if (!found.ok || found.value.remainingIn === null || found.value.remainingIn >= leastIn) return []
  return [
    `Piston to ${port} valve would be about ${found.value.remainingIn.toFixed(3)} in; the shop asks for ${leastIn.toFixed(3)}. An estimate: contact destroys an engine, so check the clearance at assembly.`,
  ]
}

function sealingCaution(follows: Consequences, port: Port, leastIn: number): string[] {
  const found = follows[port].sealing
  if (!found.ok || found.value.marginIn >= leastIn) return []
  const { marginIn, hold, beforeIn } = found.value
  const ground = groundWords(found.value)
  if (beforeIn <= 0) {
    return [
      `Stop: the deck has already cut through the sealing line of the ${port} seat, by ${formatThou(-beforeIn)} (${ground}). Hold the head: no cut without a new seat.`,
    ]
  }
  const what = hold
    ? `The new deck would reach the sealing line of the ${port} seat`
    : `The sealing line of the ${port} seat would be ${formatThou(marginIn)} from the new deck; the minimum is ${formatThou(leastIn)}`
  return [`${what} (${ground}): do not make this cut without a new seat.`]
}
