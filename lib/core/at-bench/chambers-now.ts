import { ccBeforeCut, ccOf } from '../at-mill/cc-at'
import { chamberWorks, cutsMade } from '../chamber/changes'
import { chamberOfPoint, isMillPoint } from '../chamber/mill-point'
import { shopCutOf, type CutFacts } from '../rate/shop-cut'

export type ChamberNow = {
  /** By number from the marked end. */
  readonly chamber: string
  readonly cc: number
  /** Number of the event that read it last. */
  readonly seq: number
  /** Not read since the cut itself: what it held before, less what the chambers lost that were read. */
  readonly isReckoned: boolean
}

type Reading = CutFacts['readings'][number]

/**
 * What each chamber of a head holds now, in cc, the sinking of seats since its last reading left out.
 *
 * @param facts what was read, done and sent; cc 1–400
 * @returns the chambers that are known, by number; empty while none was read since the last work on them
 *
 * As read after the last cut or work; a chamber that was not: before − (before − after) of those that were.
 * Derived: a cut takes as much from each chamber. Example: 64.0 and 63.6 before, the first at 61.0 after the cut → 61.0 and
 * 60.6, reckoned.
 */
export function chambersNow(facts: CutFacts): readonly ChamberNow[] {
  const works = chamberWorks(facts)
  const others = works.filter(({ stepId }) => stepId !== 'seat-work')
  const read = readSince(facts, Math.max(0, ...cutsMade(facts), ...others.map(({ seq }) => seq)))
  // A chamber that was read after seat work holds it already: the readings before it are of another state.
  const afterSeats = readSince(facts, Math.max(0, ...cutsMade(facts), ...works.map(({ seq }) => seq)))
  const known = new Map([...reckoned(facts, others), ...read, ...afterSeats])
  return [...known.values()].sort((a, b) => Number(a.chamber) - Number(b.chamber))
}

type Known = readonly (readonly [string, ChamberNow])[]

function readSince({ readings, burette }: CutFacts, since: number): Known {
  const cc = readings.filter((reading) => reading.kind === 'cc' && isAfter(reading, since))
  return [...ccOf(cc, burette).chambers].map(([chamber, { meanCc }]) => {
    const own = cc.filter(({ point }) => chamberOfPoint(point) === chamber)
    return [chamber, { chamber, cc: meanCc, seq: Math.max(0, ...own.map(({ seq }) => seq)), isReckoned: false }]
  })
}

/** Depth and cc at the mill may be kept as one set; only the cc before the first pass is of before the cut. */
const isAfter = ({ seq, point }: Reading, since: number): boolean =>
  seq > since || (seq === since && !isMillPoint(point, 'before'))

/** Of the chambers that were read before the cut: less what those lost that were read after it. */
function reckoned(facts: CutFacts, works: readonly { readonly seq: number }[]): Known {
  const cut = shopCutOf(facts)
  if (!cut?.before || !cut.after || cut.whyNot !== '' || works.some(({ seq }) => seq > cut.seq)) return []
  const lossCc = cut.before.cc - cut.after.cc
  return [...ccBeforeCut(facts.readings, facts.burette).chambers].map(([chamber, { meanCc }]) => [
    chamber,
    { chamber, cc: meanCc - lossCc, seq: cut.seq, isReckoned: true },
  ])
}
