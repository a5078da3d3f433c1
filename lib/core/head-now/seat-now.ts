import { castingFigures, type CastingFacts } from '../casting/figures'
import { ok, refuse, type Result } from '../errors'
import { givenFacts, knownFacts } from '../known-facts'
import { circleOver, placeCircle, type Seat } from '../seat/circles'
import { namedCircle, seatOfRecord, type Port } from '../seat/seat-of-record'
import { factOf } from '../units/fact-of'
import { acrossDeckNowIn, type DeckNow } from './deck-now'
import { recordFromDeckNow } from './record-now'

/** One valve's seat as it was read on this head on this visit, before any of its cuts: "2-exhaust". */
export type SeatReading = { readonly valve: string; readonly depthFromDeckNowIn: number }

/**
 * Where a seat's depth comes from, best first: read on this very valve; read on a like valve of this head; the record
 * less the metal gone.
 */
export type SeatGround =
  | { readonly by: 'read'; readonly valve: string }
  | { readonly by: 'like'; readonly valve: string; readonly like: string }
  | { readonly by: 'record'; readonly valve: string }

/** A seat placed over the deck as it is now. */
export type SeatNow = {
  readonly seat: Seat
  /** Deck of now to the named circle at its nearest point; below zero: the deck has gone through it. */
  readonly depthFromDeckNowIn: number
  readonly ground: SeatGround
}

export type SeatNowInput = {
  readonly record: CastingFacts
  readonly port: Port
  /** Null: the metal gone is not known. */
  readonly deck: DeckNow | null
  readonly readings: readonly SeatReading[]
}

/**
 * One valve's seat over the deck as it is now.
 *
 * @param valve "1-intake" … "12-exhaust"; @param input depth −1.25–2 in, diameters 0.3–6 in, valve angle −60–60°
 * @returns depths in inches with the ground they stand on; refused as `missing` with everything that would give them
 *
 * A reading is square to the deck of now, so the valve leans to it by θ − Φ. By the record: the named circle placed from
 * the new deck, its least height over the deck of now.
 * Example: 0.1292 on record, 0.140 gone flat, nothing read → −0.0108 by the record.
 * Derived: `placeCircle` and `circleOver` about the deck of now.
 */
export function seatOfValve(valve: string, input: SeatNowInput): Result<SeatNow> {
  const { port, readings } = input
  const own = readings.find((reading) => reading.valve === valve)
  const like = own ?? nearest(readings.filter((reading) => reading.valve.endsWith(port)))
  if (like) {
    const ground: SeatGround = own ? { by: 'read', valve } : { by: 'like', valve, like: like.valve }
    return asRead(input, like.depthFromDeckNowIn, ground)
  }
  return byRecord(valve, input)
}

/** The nearest of several seats, and how many valves of the port were not read. */
export type NearestSeat = SeatNow & { readonly notRead: number }

/**
 * Of all valves of one port the seat that is nearest to the deck: the first that a cut reaches. Valves that were not read
 * are taken like the nearest that was.
 *
 * @param chambers 1–12; left out: those that were read
 *
 * By definition: the least depth of the chambers' seats. Example: read 0.118 at chamber 1 and 0.112 at chamber 3 of four
 * → chamber 3's, two not read.
 */
export function nearestSeat(input: SeatNowInput & { readonly chambers?: number }): Result<NearestSeat> {
  const facts = knownFacts({ chambers: factOf('number of chambers', input.chambers ?? 1, 'chambers') })
  if (!facts.ok) return facts
  const read = input.readings.filter(({ valve }) => valve.endsWith(input.port)).map(({ valve }) => valve)
  const [first = `1-${input.port}`, ...others] = read
  const least = others.reduce(
    (nearestYet, valve) => nearer(nearestYet, seatOfValve(valve, input)),
    seatOfValve(first, input),
  )
  const notRead = read.length === 0 ? 0 : Math.max(0, (input.chambers ?? 0) - new Set(read).size)
  return least.ok ? ok({ ...least.value, notRead }) : least
}

const nearer = (least: Result<SeatNow>, one: Result<SeatNow>): Result<SeatNow> =>
  least.ok && one.ok && isNearer(one.value, least.value) ? one : least

const isNearer = (one: SeatNow, other: SeatNow): boolean => one.depthFromDeckNowIn < other.depthFromDeckNowIn

const nearest = (readings: readonly SeatReading[]): SeatReading | undefined =>
  readings.toSorted((a, b) => a.depthFromDeckNowIn - b.depthFromDeckNowIn)[0]

function asRead({ record, port, deck }: SeatNowInput, depthIn: number, ground: SeatGround): Result<SeatNow> {
  const leaning = deck !== null && deck.angleRad !== 0
  const figures = leaning ? recordFromDeckNow(record, deck) : record
  const given = givenFacts({
    xIn: factOf(castingFigures[`${port}ValveXIn`].label, record[`${port}ValveXIn`], 'length'),
  })
  if (!given.ok) return given
  const seat: Seat = {
    ...seatOfRecord(record, port),
    gauge: { depthIn, circle: namedCircle },
    valveAngleDeg: figures[`${port}ValveAngleDeg`],
    cantDeg: figures[`${port}ValveCantDeg`],
  }
  return ok({ seat: { ...seat, xIn: acrossNow(seat, deck) }, depthFromDeckNowIn: depthIn, ground })
}

/** Across the deck of now: a leaning head brings what lies higher farther over. */
function acrossNow(seat: Seat, deck: DeckNow | null): Seat['xIn'] {
  if (deck === null || deck.angleRad === 0 || seat.xIn === null || seat.xIn === undefined) return seat.xIn
  const sealing = placeCircle(seat, 'sealing', false)
  return sealing.ok ? acrossDeckNowIn(deck, seat.xIn, sealing.value.centre.zIn) : seat.xIn
}

function byRecord(valve: string, input: SeatNowInput): Result<SeatNow> {
  const { record, port, deck } = input
  const seat = seatOfRecord(record, port)
  if (deck === null) {
    return refuse(
      'missing',
      'Needs a seat depth read on this head, or the new thickness or the metal removed before.',
      {
        needs: ['seatReading', 'thicknessNewIn', 'removedBeforeIn'],
      },
    )
  }
  if (deck.angleRad === 0) {
    const depth = knownFacts({ depthIn: factOf('deck to the named circle', seat.gauge.depthIn, 'seatDepth') })
    return depth.ok ? asRead(input, depth.value.depthIn - deck.flatIn, { by: 'record', valve }) : depth
  }
  const placed = placeCircle(seat, namedCircle, true)
  if (!placed.ok) return placed
  return asRead(input, circleOver(deck, placed.value).leastIn, { by: 'record', valve })
}
