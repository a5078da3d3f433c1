import type { CastingFacts } from '../casting/figures'
import { axisAfter, sectionAngleDeg, valveAxis } from '../clearance/valve-axis'
import { degrees } from '../units/degrees'
import { quantities, type Quantity } from '../units/quantities'
import { placeFromDeckNow, type DeckNow } from './deck-now'

/**
 * A casting's figures with every place seen from the deck as it is now: heights square to it, places across from where it
 * meets the shallow edge, valve angles to its normal. What counts from new (thickness, land, depth of holes, length of
 * the bolt hole, seats) stays as the record has it: each is worked out where it is asked for.
 */
export type FiguresFromDeckNow = CastingFacts & { readonly deck: 'now' }

const places = [
  ['intakeValveXIn', 'intakeValveZIn'],
  ['exhaustValveXIn', 'exhaustValveZIn'],
  ['portXIn', 'portZIn'],
  ['rockerXIn', 'rockerZIn'],
  ['camXIn', 'camZIn'],
] as const

/**
 * The record's places and valve angles to the deck as it is now; inches and degrees.
 *
 * A place of which only one of its two figures is known stays as it is on a deck that is flat, and is not known to one
 * that leans. Dowels are taken where they mouth in the deck.
 * Derived: `placeFromDeckNow` for places, rotation by Φ for valve angles. Example: 0.040 gone flat, a port 2.100 up →
 * 2.060; valve at 23° on a deck that leans 1° its way → 22°.
 */
export function recordFromDeckNow(record: CastingFacts, deck: DeckNow): FiguresFromDeckNow {
  if (deck.angleRad === 0 && deck.flatIn === 0) return { ...record, deck: 'now' }
  return {
    ...record,
    ...Object.assign({}, ...places.map(([x, z]) => placed(record, deck, x, z))),
    ...angles(record, deck, 'intake'),
    ...angles(record, deck, 'exhaust'),
    ...dowels(record, deck),
    deck: 'now',
  }
}

function dowels({ dowelXIn }: CastingFacts, deck: DeckNow): CastingFacts {
  if (dowelXIn === undefined || isImpossible(dowelXIn, 'length')) return {}
  return { dowelXIn: dowelXIn / Math.cos(deck.angleRad) }
}

const isImpossible = (value: number | undefined, quantity: Quantity): boolean =>
  value !== undefined && !(value >= quantities[quantity].least && value <= quantities[quantity].most)

type XKey = (typeof places)[number][0]
type ZKey = (typeof places)[number][1]

function placed(record: CastingFacts, deck: DeckNow, x: XKey, z: ZKey): CastingFacts {
  const { [x]: fromShallowEdgeIn, [z]: heightFromNewDeckIn } = record
  // An impossible figure stays as it was typed: the calculation that needs it refuses it by its name.
  if (isImpossible(fromShallowEdgeIn, 'length') || isImpossible(heightFromNewDeckIn, 'length')) return {}
  if (fromShallowEdgeIn !== undefined && heightFromNewDeckIn !== undefined) {
    const now = placeFromDeckNow(deck, { fromShallowEdgeIn, heightFromNewDeckIn })
    return { [x]: now.fromShallowEdgeIn, [z]: now.heightFromDeckNowIn }
  }
  if (deck.angleRad !== 0) return { [x]: undefined, [z]: undefined }
  return heightFromNewDeckIn === undefined ? {} : { [z]: heightFromNewDeckIn - deck.flatIn }
}

function angles(record: CastingFacts, deck: DeckNow, port: 'intake' | 'exhaust'): CastingFacts {
  const angleDeg = record[`${port}ValveAngleDeg`]
  const recordedCantDeg = record[`${port}ValveCantDeg`]
  if (angleDeg === undefined || deck.angleRad === 0) return {}
  if (isImpossible(angleDeg, 'valveAngle') || isImpossible(recordedCantDeg, 'valveAngle')) return {}
  const now = axisAfter(valveAxis(angleDeg, recordedCantDeg), deck)
  const cantDeg = now.y === 0 ? {} : { [`${port}ValveCantDeg`]: degrees(Math.atan2(now.y, -now.z)) }
  return { [`${port}ValveAngleDeg`]: sectionAngleDeg(now), ...cantDeg }
}
