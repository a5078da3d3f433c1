import type { EngineFacts } from '../engine/figures'
import { knownFacts } from '../known-facts'
import { factOf } from '../units/fact-of'
import { quantities } from '../units/quantities'
import { ok, refuse, type Result } from '../errors'
import { ccPerIn3 } from '../units/factors'

const cylinderCc = (boreIn: number, heightIn: number): number => (Math.PI / 4) * boreIn ** 2 * heightIn * ccPerIn3

export type Volumes = {
  readonly sweptCc: number
  /** Everything over the piston at top dead centre but the chamber itself. */
  readonly besideChamberCc: number
}

/**
 * Swept volume, and the clearance volume beside the chamber, of one cylinder.
 *
 * @param engine bore, stroke, gasket bore and thickness, deck clearance in inches (negative: piston above the deck), dish
 *   and dome in cc. A gasket bore under the bore is refused as `contradiction`. A piston has one or the other, so one of them is enough (0: a flat crown); with neither the answer is
 *   `missing`. A gasket of no thickness needs no bore.
 *
 * Vs = π/4·bore²·stroke; beside the chamber: gasket + deck clearance + dish − dome.
 * Example: 4.000 × 3.48 in, deck 0.050, gasket 4.000 × 0.020, dish 5 → 716.6 and 19.4 cc.
 * Derived: volumes of cylinders.
 */
export function cylinderVolumes(engine: Partial<EngineFacts>): Result<Volumes> {
  const { pistonDishCc, pistonDomeCc } = engine
  const facts = knownFacts({
    boreIn: factOf('bore', engine.boreIn, 'bore'),
    strokeIn: factOf('stroke', engine.strokeIn, 'stroke'),
    gasketBoreIn: factOf('gasket bore', engine.gasketThicknessIn === 0 ? 1 : engine.gasketBoreIn, 'bore'),
    gasketThicknessIn: factOf('gasket thickness', engine.gasketThicknessIn, 'gasket'),
    deckClearanceIn: factOf('deck clearance', engine.deckClearanceIn, 'deckClearance'),
    pistonDishCc: factOf('piston dish or dome', pistonDishCc ?? (pistonDomeCc === undefined ? null : 0), 'pistonDish'),
    pistonDomeCc: factOf('piston dome', pistonDomeCc ?? 0, 'pistonDome'),
  })
  if (!facts.ok) return facts
  const v = facts.value
  if (v.gasketThicknessIn > 0 && v.gasketBoreIn < v.boreIn) {
    return refuse(
      'contradiction',
      `The gasket bore of ${v.gasketBoreIn} in is smaller than the bore of ${v.boreIn} in: the gasket would stand into the cylinder. Correct one of them.`,
      { fields: { gasketBoreIn: 'smaller than the bore' } },
    )
  }
  return ok({
    sweptCc: cylinderCc(v.boreIn, v.strokeIn),
    besideChamberCc:
      cylinderCc(v.gasketBoreIn, v.gasketThicknessIn) +
      cylinderCc(v.boreIn, v.deckClearanceIn) +
      v.pistonDishCc -
      v.pistonDomeCc,
  })
}

const volumeFacts = ({ sweptCc, besideChamberCc }: Volumes) =>
  ({
    sweptCc: ['swept volume', sweptCc, 1, 40_000],
    besideChamberCc: ['volume beside the chamber', besideChamberCc, -1500, 1500],
  }) as const

/** A flat-deck head has no chamber, only its valve pockets; proud valves make them less than nothing. */
type Holds = 'chamberVolume' | 'pocketVolume'

/** Everything over the piston at top dead centre, in cc: it must be something. */
function clearanceVolume(volumes: Volumes, chamberCc: number, holds: Holds = 'chamberVolume'): Result<number> {
  const facts = knownFacts({
    ...volumeFacts(volumes),
    chamberCc: factOf('chamber', chamberCc, holds),
  })
  if (!facts.ok) return facts
  const clearanceCc = facts.value.chamberCc + facts.value.besideChamberCc
  if (clearanceCc > 0) return ok(clearanceCc)
  return refuse('contradiction', 'The piston would fill the whole chamber: check dome and deck clearance.')
}

/**
 * Compression ratio (Vs + Vc)/Vc.
 *
 * @param volumes from `cylinderVolumes`, or given: swept 1–40,000 cc, beside the chamber in cc
 * @param chamberCc 1–400; @param holds a flat-deck head's valve pockets instead: −100–400
 * @returns the ratio, 2–30; refused as `contradiction` when the figures give another, or no clearance volume at all
 *
 * Example: Vs 216.52, Vc 25.0 → 9.66 (Energies 2023, 16, 6655).
 * By definition: volume at bottom over volume at top dead centre.
 */
export function compressionRatio(volumes: Volumes, chamberCc: number, holds: Holds = 'chamberVolume'): Result<number> {
  const clearance = clearanceVolume(volumes, chamberCc, holds)
  if (!clearance.ok) return clearance
  const ratio = (volumes.sweptCc + clearance.value) / clearance.value
  const { least, most } = quantities.compressionRatio
  if (ratio >= least && ratio <= most) return ok(ratio)
  return refuse(
    'contradiction',
    `These figures give a compression ratio of ${ratio.toFixed(ratio < 10 ? 2 : 0)} : 1, outside ${least} to ${most}: check bore, stroke, chamber, piston and deck clearance.`,
  )
}

/**
 * Chamber volume in cc for a wanted ratio: Vs/(CR − 1) less what lies beside the chamber.
 *
 * @param volumes as for `compressionRatio`; @param ratio 2–30
 * @returns cc; refused as `unreachable` when that is no chamber (1–400)
 *
 * Example: Vs 720, beside 20 cc, 10:1 → 60 cc.
 * Derived: `compressionRatio` solved for the chamber.
 */
export function chamberForRatio(volumes: Volumes, ratio: number): Result<number> {
  const facts = knownFacts({ ...volumeFacts(volumes), ratio: factOf('compression ratio', ratio, 'compressionRatio') })
  if (!facts.ok) return facts
  const chamberCc = facts.value.sweptCc / (facts.value.ratio - 1) - facts.value.besideChamberCc
  const { least, most } = quantities.chamberVolume
  return chamberCc >= least && chamberCc <= most
    ? ok(chamberCc)
    : refuse('unreachable', `That ratio would need a chamber of ${chamberCc.toFixed(1)} cc.`)
}

/**
 * Change of the ratio for one cc more in the chamber: −Vs/Vc².
 *
 * @param volumes and @param chamberCc as for `compressionRatio`
 *
 * Example: Vs 720, Vc 80 → −0.1125 a cc.
 * Derived: the derivative of 1 + Vs/Vc.
 */
export function ratioPerCc(volumes: Volumes, chamberCc: number): Result<number> {
  const clearance = clearanceVolume(volumes, chamberCc)
  return clearance.ok ? ok(-volumes.sweptCc / clearance.value ** 2) : clearance
}
