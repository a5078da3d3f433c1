import { chamberOfPoint, isMillPoint, millPoint } from '../chamber/mill-point'
import { agreed, together, within } from './compare'
import { cutHere } from './cut-here'
import { figureKey, type Comparison, type CutSince, type Expected, type ExpectedFacts } from './types'

/**
 * What a chamber is expected to hold, in cc (1–400).
 *
 * @param point the chamber, or "at-stop", "at-size" at the mill
 * @returns null when there is nothing to hold it against
 *
 * After a cut: its own value before less k·d, and nothing else. Otherwise the median of the others at this step, else the
 * mate's, else the nominal volume less what is gone. Example: others 63.9, 64.0, 63.8 → 63.9 ± 1.5.
 * Derived: as the functions it is made of.
 */
export function expectedChamber(point: string, facts: ExpectedFacts): Expected | null {
  return together([afterCut(point, facts) ?? besideOthers(point, facts) ?? besideMate(facts) ?? besideNominal(facts)])
}

/**
 * Standard uncertainty of a reading less what a cut should have left, in cc.
 *
 * @param uBeforeCc, uReadCc of the readings before and now; @param depthThou at the chamber (0–500)
 *
 * u² = u_b² + u_a² + (k₀·u_d)² + (τ·d)² + (u₋·d)², τ = share × k₀: the terms by which a cut is judged.
 * Derived: independent uncertainties add in squares. Example: 0.3 and 0.3 cc, 20 thou at 0.16 ± 0.008 cc per thou, set to
 * 0.5 thou, 3 % between heads → √(0.09 + 0.09 + 0.0064 + 0.009216 + 0.0256) = 0.4702.
 */
export function uAfterCut(
  { uBeforeCc, uReadCc }: { readonly uBeforeCc: number; readonly uReadCc: number },
  rate: NonNullable<ExpectedFacts['chamber']['rate']>,
  depthThou: number,
  depthErrorThou: number,
): number {
  const { uCcPerThou, priorCcPerThou, betweenHeadPart } = rate
  return Math.hypot(
    uBeforeCc,
    uReadCc,
    priorCcPerThou * depthErrorThou,
    betweenHeadPart * priorCcPerThou * depthThou,
    uCcPerThou * depthThou,
  )
}

function afterCut(point: string, facts: ExpectedFacts): Comparison | null {
  const { chamber, limits, before, here } = facts
  const number = chamberOfPoint(point)
  const beforeCc = before[figureKey('cc', number)]
  const cut = isMillPoint(point, 'before') ? beforeMill(facts) : cutHere(facts)
  if (beforeCc === undefined || !cut || chamber.workedSince || isBeforeCut(facts)) return null
  const depthIn = depthAtShare(cut, chamber.centroidShare)
  if (depthIn === null || !chamber.rate) return null
  const depthThou = depthIn * 1000
  const uReadCc = uOfReading(facts)
  const uBeforeCc = chamber.uBeforeCc[number] ?? uReadCc
  const u = uAfterCut({ uBeforeCc, uReadCc }, chamber.rate, depthThou, chamber.depthErrorThou)
  const room = Math.max(limits.expectAfterCutCc, limits.expectAfterCutTimesU * u)
  const value = beforeCc - chamber.rate.ccPerThou * depthThou
  if (depthThou === 0) return within(beforeCc, room, { code: 'before' })
  const why = { code: 'before-less-cut', before: beforeCc, depthIn } as const
  // Read on the way, at a depth that only the machinist knows, it lies between before and the end.
  const onTheWay = isMillPoint(point, 'at-stop') && here[figureKey('cc', millPoint('at-size', number))] !== undefined
  return onTheWay ? { value: null, low: value - room, high: beforeCc + room, why } : within(value, room, why)
}

/** What is read there is what the cut starts from. */
export const isBeforeCut = ({ stepId }: Pick<ExpectedFacts, 'stepId'>): boolean =>
  stepId === 'chambers' || stepId === 'open-chamber'

/** What was cut when the head came to the mill. */
function beforeMill({ cut, millDepthIn }: ExpectedFacts): CutSince | null {
  return cut && { shallowIn: cut.shallowIn - millDepthIn, deepIn: cut.deepIn - millDepthIn }
}

/** Depth at a place across, in inches; null when it depends on the place and that is not known. */
function depthAtShare({ shallowIn, deepIn }: { shallowIn: number; deepIn: number }, share: number | null) {
  if (Math.abs(deepIn - shallowIn) < 1e-9) return shallowIn
  return share === null ? null : shallowIn + (deepIn - shallowIn) * share
}

/** u² = s² + r²/12 of one reading. */
const uOfReading = ({ chamber }: ExpectedFacts): number =>
  Math.hypot(chamber.repeatabilityCc, chamber.divisionCc / Math.sqrt(12))

/** The larger of the two limits, and no more than a part of what is expected. */
function roomAbout({ limits }: ExpectedFacts, expectedCc: number, u: number): number {
  const room = Math.max(limits.expectChamberCc, limits.expectChamberTimesU * u)
  return Math.min(room, limits.expectChamberMostPart * Math.abs(expectedCc))
}

function besideOthers(point: string, facts: ExpectedFacts): Comparison | null {
  if (!/^\d+$/.test(point)) return null
  const others = Array.from({ length: facts.chambers }, (_, at) => String(at + 1)).flatMap((number) =>
    number === point ? [] : (facts.here[figureKey('cc', number)] ?? []),
  )
  // The median of n is taken as known as well as their mean.
  const u = uOfReading(facts) * Math.sqrt(1 + 1 / Math.max(1, others.length))
  const middle = agreed(others, (value) => roomAbout(facts, value, u))
  return middle === null ? null : within(middle, roomAbout(facts, middle, u), { code: 'other-chambers' })
}

function besideMate(facts: ExpectedFacts): Comparison | null {
  const mateCc = facts.mate[figureKey('cc', '')]
  if (mateCc === undefined) return null
  return within(mateCc, roomAbout(facts, mateCc, uOfReading(facts) * Math.SQRT2), { code: 'mate' })
}

function besideNominal({ chamber, limits }: ExpectedFacts): Comparison | null {
  const nominalCc = chamber.nominalLessGoneCc
  return nominalCc === null
    ? null
    : within(nominalCc, limits.expectNominalPart * Math.abs(nominalCc), { code: 'nominal-less-gone' })
}
