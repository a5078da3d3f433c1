import type { Result } from '../errors'
import { knownKey, type ExpectedFacts } from '../expected/types'
import { portOf } from '../readings/valves'
import type { ReadingKind } from '../readings/types'
import { shimChoice, type ShimChoice } from '../springs/shim-choice'
import { usableLift, type UsableLift } from '../springs/usable-lift'

/** As much of what is known of a head as its springs ask for. */
export type SpringFacts = Pick<ExpectedFacts, 'here' | 'before' | 'limits' | 'liftIn' | 'wanted' | 'shimsIn'>

export type SpringOfValve = {
  readonly liftIn: number | null
  /** As the spring stands now, with the shims that are in. */
  readonly usable: Result<UsableLift>
  /** Installed height now, shims that came since it was measured taken off; null: not measured. */
  readonly installedHeightIn: number | null
  /** Null: no seat pressure is wanted, so no shim is. */
  readonly shim: Result<ShimWithLift> | null
  /** How the rate is known; null: not known. */
  readonly rateFrom: 'maker' | 'pressures' | null
}

export type ShimWithLift = ShimChoice & {
  /** With those shims in. */
  readonly usable: Result<UsableLift>
}

/**
 * The spring of one valve as typed: how far the valve may open, which of the shop's shims bring the wanted seat pressure, and
 * what stands with them in.
 *
 * @param point of the valve; @param facts what was typed here and read before: inches, lbf, lbf/in
 * @returns each part refused by what it lacks
 *
 * Rate: the maker's, else (open − seat)/lift. Installed height: as measured, less shims that were added since.
 * Derived: as `usableLift` and `shimChoice`; the shims raise the spring's seat, so the retainer stays where it is.
 * Example: 0.642 to the seal, 1.800 installed, 1.060 at coil bind, lift 0.550; 110 lbf, 400 lbf/in, 125 wanted, shims of
 * 0.030 → usable 0.592; one shim: 1.770, 122 lbf, usable still 0.592, open 342.
 */
export function springOfValve(point: string, facts: SpringFacts): SpringOfValve {
  const { limits, liftIn: lifts, shimsIn } = facts
  const port = portOf(point)
  const liftIn = lifts[port]
  const installedHeightIn = installedNow(point, facts)
  const fit = {
    retainerToSealIn: figureOf('retainer-to-seal', point, facts),
    coilBindIn: figureOf('coil-bind', point, facts),
    liftIn,
    retainerMarginIn: limits.retainerMarginIn,
    coilBindMarginIn: limits.coilBindMarginIn,
  }
  const wantedLbf = facts.wanted[`${port}SeatPressureLbf`]?.value ?? null
  const { rateLbfPerIn, rateFrom } = rateOf(point, facts)
  const usable = usableLift({ ...fit, installedHeightIn })
  if (wantedLbf === null) return { liftIn, usable, installedHeightIn, shim: null, rateFrom }
  const seatLbf = figureOf('seat-pressure', point, facts)
  const chosen = shimChoice({ seatLbf, wantedLbf, rateLbfPerIn, installedHeightIn, liftIn, shimsIn })
  const shim: Result<ShimWithLift> = chosen.ok
    ? {
        ok: true,
        value: {
          ...chosen.value,
          usable: usableLift({ ...fit, installedHeightIn: chosen.value.installedHeightIn }),
        },
      }
    : chosen
  return { liftIn, usable, installedHeightIn, shim, rateFrom }
}

/** What is typed here, else what was read before. */
const figureOf = (kind: ReadingKind, point: string, { here, before }: SpringFacts): number | null =>
  here[knownKey(here, kind, point) ?? ''] ?? before[knownKey(before, kind, point) ?? ''] ?? null

/** It is measured with the shims in; what is added at a later step comes off it. */
function installedNow(point: string, facts: SpringFacts): number | null {
  const { here, before } = facts
  const measuredHere = here[knownKey(here, 'installed-height', point) ?? ''] ?? null
  if (measuredHere !== null) return measuredHere
  const measured = figureOf('installed-height', point, facts)
  const then = before[knownKey(before, 'shims', point) ?? ''] ?? null
  const now = here[knownKey(here, 'shims', point) ?? ''] ?? null
  return measured === null || then === null || now === null ? measured : measured - (now - then)
}

function rateOf(
  point: string,
  facts: SpringFacts,
): { readonly rateLbfPerIn: number | null; readonly rateFrom: SpringOfValve['rateFrom'] } {
  const port = portOf(point)
  const makers = figureOf('spring-rate', port, facts)
  if (makers !== null) return { rateLbfPerIn: makers, rateFrom: 'maker' }
  const [seat, open] = [figureOf('seat-pressure', point, facts), figureOf('open-pressure', point, facts)]
  const liftIn = facts.liftIn[port]
  if (seat === null || open === null || liftIn === null || liftIn <= 0 || open <= seat) {
    return { rateLbfPerIn: null, rateFrom: null }
  }
  const rateLbfPerIn = (open - seat) / liftIn
  return Number.isFinite(rateLbfPerIn)
    ? { rateLbfPerIn, rateFrom: 'pressures' }
    : { rateLbfPerIn: null, rateFrom: null }
}
