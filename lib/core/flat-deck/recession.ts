import { valveAxis } from '../clearance/valve-axis'
import { ok, refuse, type Result } from '../errors'
import { knownFacts } from '../known-facts'
import { factOf } from '../units/fact-of'
import { quantities } from '../units/quantities'

type Leaning = {
  /** From square to the deck; needed only where the valve is sunk. */
  readonly valveAngleDeg: number | null | undefined
  /** Second angle, seen from the side; not on record: none. */
  readonly cantDeg?: number | null | undefined
}

/**
 * How far a valve head lies below the deck after a cut, in inches; below zero it stands proud.
 *
 * @param beforeIn recession before, −0.25–0.5 in; @param cutIn what the cut takes at that valve, 0–0.5 in
 * @param sinkIn what seat work sinks the valve along its axis, 0–0.25 in
 * @param valve its angles, −60–60°: needed only where it is sunk
 *
 * after = before − cut + sink·cos θ, θ the whole angle to the deck's normal.
 * Example: 0.040 before, 0.012 cut, not sunk → 0.028; sunk 0.010 at 60° → 0.033.
 * Derived: the deck comes up by the cut, the sink goes away from it by its part square to the deck.
 */
export function recessionAfter(
  beforeIn: number | null | undefined,
  cutIn: number,
  sinkIn: number,
  valve: Leaning,
): Result<number> {
  const facts = knownFacts({
    beforeIn: factOf('valve recession', beforeIn, 'recession'),
    cutIn: factOf('depth of cut', cutIn, 'cutDepth'),
    sinkIn: factOf('sink of the seat', sinkIn, 'sink'),
  })
  if (!facts.ok) return facts
  const uprightPart = sinkIn === 0 ? ok(1) : uprightPartOf(valve)
  if (!uprightPart.ok) return uprightPart
  const f = facts.value
  return ok(f.beforeIn - f.cutIn + f.sinkIn * uprightPart.value)
}

/**
 * How far seat work must sink a valve along its axis so that it lies as deep as it must, in inches; 0 when it does.
 *
 * @param afterCutIn recession after the cut, −0.75–0.5 in; @param leastIn the least allowed, −0.25–0.5 in
 * @returns refused as `unreachable` when it is more than any seat is sunk (0.25 in): the seat must be renewed
 *
 * q = (least − after)/cos θ. Example: 0.028 after, 0.030 at least, upright → 0.002; at 60° → 0.004.
 * Derived: `recessionAfter` solved for the sink.
 */
export function sinkForRecession(afterCutIn: number, leastIn: number, valve: Leaning): Result<number> {
  const facts = knownFacts({
    afterCutIn: ['recession after the cut', afterCutIn, deepestProudIn, quantities.recession.most],
    leastIn: factOf('least recession', leastIn, 'recession'),
  })
  if (!facts.ok) return facts
  const shortIn = facts.value.leastIn - facts.value.afterCutIn
  if (shortIn <= rounding) return ok(0)
  const uprightPart = uprightPartOf(valve)
  if (!uprightPart.ok) return uprightPart
  const sinkIn = shortIn / uprightPart.value
  if (sinkIn <= quantities.sink.most) return ok(sinkIn)
  return refuse('unreachable', `The valve would have to be sunk ${sinkIn.toFixed(3)} in: more than a seat is sunk.`)
}

/** The most proud that a valve can stand after a cut of the deepest kind. */
const deepestProudIn = quantities.recession.least - quantities.cutDepth.most
const rounding = 1e-9

/** Cosine of the whole angle between a valve and the deck's normal. */
function uprightPartOf({ valveAngleDeg, cantDeg }: Leaning): Result<number> {
  const angles = knownFacts({
    valveAngleDeg: factOf('valve angle', valveAngleDeg, 'valveAngle'),
    cantDeg: factOf('second valve angle', cantDeg ?? 0, 'valveAngle'),
  })
  return angles.ok ? ok(-valveAxis(angles.value.valveAngleDeg, angles.value.cantDeg).z) : angles
}
