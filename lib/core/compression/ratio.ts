import type { EngineFacts } from '../engine/figures'
import { knownFacts } from '../known-facts'
import { ok, refuse, type Result } from '../errors'

const cm3PerIn3 = 2.54 ** 3

const cylinderCc = (boreIn: number, heightIn: number): number =>
  (Math.PI / 4) * boreIn ** 2 * heightIn * cm3PerIn3

export type Volumes = {
  readonly sweptCc: number
  /** Everything over the piston at top dead centre but the chamber itself. */
  readonly besideChamberCc: number
}

/**
 * Swept volume, and the clearance volume beside the chamber, of one cylinder.
 *
 * @param engine bore, stroke, gasket bore and thickness, deck clearance in inches (negative: piston above the deck), dish
 *   and dome in cc; dish and dome that are not known count as none when the other or neither is given
 *
 * Vs = π/4·bore²·stroke; beside the chamber: gasket + deck clearance + dish − dome.
 * Example: 4.000 × 3.48 in, deck 0.050, gasket 4.000 × 0.020, dish 5 → 716.6 and 19.4 cc.
 */
export function cylinderVolumes(engine: Partial<EngineFacts>): Result<Volumes> {
  const facts = knownFacts({
    boreIn: ['bore', engine.boreIn, 0.5, 12],
    strokeIn: ['stroke', engine.strokeIn, 0.5, 12],
    gasketBoreIn: ['gasket bore', engine.gasketBoreIn, 0.5, 12],
    gasketThicknessIn: ['gasket thickness', engine.gasketThicknessIn, 0, 0.5],
    deckClearanceIn: ['deck clearance', engine.deckClearanceIn, -0.5, 0.5],
    pistonDishCc: ['piston dish', engine.pistonDishCc ?? 0, 0, 200],
    pistonDomeCc: ['piston dome', engine.pistonDomeCc ?? 0, 0, 200],
  })
  if (!facts.ok) return facts
  const v = facts.value
  return ok({
    sweptCc: cylinderCc(v.boreIn, v.strokeIn),
    besideChamberCc:
      cylinderCc(v.gasketBoreIn, v.gasketThicknessIn) +
      cylinderCc(v.boreIn, v.deckClearanceIn) +
      v.pistonDishCc -
      v.pistonDomeCc,
  })
}

/**
 * Compression ratio (Vs + Vc)/Vc.
 *
 * @param volumes from `cylinderVolumes`, or given: cc
 * @param chamberCc 1–400
 * @returns the ratio; refused when the clearance volume is not positive
 *
 * Example: Vs 216.52, Vc 25.0 → 9.66 (Energies 2023, 16, 6655).
 */
export function compressionRatio({ sweptCc, besideChamberCc }: Volumes, chamberCc: number): Result<number> {
  const facts = knownFacts({
    chamberCc: ['chamber', chamberCc, 1, 400],
    sweptCc: ['swept volume', sweptCc, 1, 40_000],
  })
  if (!facts.ok) return facts
  const clearanceCc = chamberCc + besideChamberCc
  if (!(clearanceCc > 0)) {
    return refuse('contradiction', 'The piston would fill the whole chamber: check dome and deck clearance.')
  }
  return ok((sweptCc + clearanceCc) / clearanceCc)
}

/**
 * Chamber volume in cc for a wanted ratio: Vs/(CR − 1) less what lies beside the chamber.
 *
 * @param ratio 2–30. Example: Vs 720, beside 20 cc, 10:1 → 60 cc.
 */
export function chamberForRatio({ sweptCc, besideChamberCc }: Volumes, ratio: number): Result<number> {
  const facts = knownFacts({ ratio: ['compression ratio', ratio, 2, 30] })
  if (!facts.ok) return facts
  const chamberCc = sweptCc / (facts.value.ratio - 1) - besideChamberCc
  return chamberCc >= 1 && chamberCc <= 400
    ? ok(chamberCc)
    : refuse('unreachable', `That ratio would need a chamber of ${chamberCc.toFixed(1)} cc.`)
}

/** Change of the ratio for one cc more in the chamber: −Vs/Vc². */
export const ratioPerCc = ({ sweptCc, besideChamberCc }: Volumes, chamberCc: number): number =>
  -sweptCc / (chamberCc + besideChamberCc) ** 2
