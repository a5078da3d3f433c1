import { nearestSeat, type NearestSeat, type SeatReading } from '../head-now/seat-now'
import { sealingMargin } from '../seat/after-cut'
import type { ConsequencesInput } from './consequences-input'
import { headsOnDeck, type HeadOnDeck } from './heads-on-deck'
import { ports, valveConsequences, type Port } from './valve-consequences'

/** A seat that a cut has gone through. */
export type CutThrough = {
  readonly port: Port
  /** How far the deck lies over the sealing line at its nearest point, in inches; 0: it just reaches it. */
  readonly byIn: number
  readonly ground: NearestSeat['ground']
}

/**
 * The seats of a head whose sealing line a cut that was made has reached or gone through: the head is held.
 *
 * @param input the cut as it was measured, 0–0.5 in a part, and the head as it was before it
 * @param readAfter seats that were read after that cut, −0.25–2 in: of a port that was read they alone count
 * @returns a line for each port; a seat of which too little is known says nothing
 *
 * Example: sealing line 0.040 in over the deck, 0.045 cut flat → by 0.005; read 0.002 after it → not cut through.
 * Derived: the margin of `sealingMargin` at or below nothing, at the seat that is nearest to the deck.
 */
export function cutThroughSeats(input: ConsequencesInput, readAfter: readonly SeatReading[]): readonly CutThrough[] {
  const heads = headsOnDeck(input.heads, input.casting, input.cut, input.deepEdge)
  return ports.flatMap((port) => {
    const margin = marginAfter(input, heads, port, readAfter)
    return margin !== null && margin.marginIn <= 0 ? [{ port, byIn: -margin.marginIn, ground: margin.ground }] : []
  })
}

type Margin = { readonly marginIn: number; readonly ground: NearestSeat['ground'] }

function marginAfter(
  input: ConsequencesInput,
  heads: readonly HeadOnDeck[],
  port: Port,
  readAfter: readonly SeatReading[],
): Margin | null {
  const readings = readAfter.filter(({ valve }) => valve.endsWith(port))
  const [head] = heads
  if (readings.length === 0 || !head) {
    const { sealing } = valveConsequences(input, heads, port)
    return sealing.ok ? sealing.value : null
  }
  const deck = head.deckAfter.ok ? head.deckAfter.value : null
  const nearest = nearestSeat({ record: input.casting, port, deck, readings, chambers: head.chambers })
  if (!nearest.ok) return null
  const none = { flatIn: 0, angleIn: 0, milledWidthIn: input.cut.milledWidthIn }
  const margin = sealingMargin(none, nearest.value.seat)
  return margin.ok ? { marginIn: margin.value.marginIn, ground: nearest.value.ground } : null
}
