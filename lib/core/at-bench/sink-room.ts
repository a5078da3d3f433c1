import type { CastingFacts } from '../casting/figures'
import { seatWorkCc } from '../cut/seat-work'
import { ok, refuse, type Result } from '../errors'
import { knownFacts } from '../known-facts'
import { factOf } from '../units/fact-of'

export type SinkRoom = {
  /** The largest chamber, which is the first to reach the target. */
  readonly chamber: string
  /** What it holds now. */
  readonly cc: number
  /** How much a thou of sink at every valve of a chamber adds. */
  readonly ccPerThou: number
  /** Sink of every valve that brings it to the target, and to the end of the tolerance; below zero: past it already. */
  readonly toTargetIn: number
  readonly mostIn: number
}

type Chamber = { readonly chamber: string; readonly cc: number }

/**
 * How far every valve may still be sunk before the largest chamber is past its target, in inches along the valves' axes.
 *
 * @param chambers what each holds now, 1–400 cc; @param target cc and its tolerance; @param casting valve heads 0.3–5 in
 * @returns refused without a chamber or without the valve sizes
 *
 * q = (target − V)/Σ n·π/4·D²·16.387064, and the same for target + tolerance. Derived: `seatWorkCc` solved for the sink.
 * Example: valves of 2.05 and 1.60 in, 59.2 cc, target 60.0 ± 0.5 → 9.2 thou to the target, 14.9 at most.
 */
export function sinkRoom(
  chambers: readonly Chamber[],
  target: { readonly cc: number; readonly toleranceCc: number },
  casting: Pick<CastingFacts, 'intakeValveIn' | 'exhaustValveIn' | 'intakeValves' | 'exhaustValves'>,
): Result<SinkRoom> {
  const [first, ...rest] = chambers
  if (!first) return refuse('missing', 'Needs the cc of a chamber as it is now.', { needs: ['ccNow'] })
  const largest = rest.reduce((most, one) => (one.cc > most.cc ? one : most), first)
  const facts = knownFacts({
    cc: factOf('chamber', largest.cc, 'chamberVolume'),
    targetCc: factOf('target', target.cc, 'chamberVolume'),
    toleranceCc: factOf('tolerance', target.toleranceCc, 'volume'),
  })
  if (!facts.ok) return facts
  const perThou = seatWorkCc(casting, 0.001)
  if (!perThou.ok) return perThou
  const { cc, targetCc, toleranceCc } = facts.value
  const sinkIn = (roomCc: number): number => (roomCc / perThou.value) * 0.001
  return ok({
    chamber: largest.chamber,
    cc,
    ccPerThou: perThou.value,
    toTargetIn: sinkIn(targetCc - cc),
    mostIn: sinkIn(targetCc + toleranceCc - cc),
  })
}
