import { castingFigureKeys, type CastingFacts } from '../casting/figures'
import type { HeadNow } from '../cut/plan-types'
import type { Edge } from '../head-now/deck-now'
import { nearestSeat } from '../head-now/seat-now'
import { headsOnDeck } from './heads-on-deck'
import { ports } from './valve-consequences'

/**
 * The casting as its section is drawn: places and seats of the first head over the deck that it has now. A seat whose
 * depth is not known is left out, and the drawing says so.
 */
export function castingAsItIs(heads: readonly HeadNow[], record: CastingFacts, deepEdge: Edge): CastingFacts {
  const [head] = headsOnDeck(heads, record, { flatIn: 0, angleIn: 0 }, deepEdge)
  if (!head) return record
  const deck = head.deckBefore.ok ? head.deckBefore.value : null
  const depths = ports.map((port) => {
    const seat = nearestSeat({ record, port, deck, readings: head.seatReadings })
    return [`${port}SeatDepthIn`, seat.ok ? seat.value.depthFromDeckNowIn : undefined] as const
  })
  const all: CastingFacts = { ...head.casting, ...Object.fromEntries(depths) }
  const known = castingFigureKeys.filter((key) => all[key] !== undefined)
  return Object.fromEntries(known.map((key) => [key, all[key]]))
}
