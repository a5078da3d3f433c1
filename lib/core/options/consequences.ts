import { camDrop, rockerDrop, type CamDrop, type RockerDrop } from '../clearance/point-drop'
import { compressionRatio, cylinderVolumes } from '../compression/ratio'
import type { EngineFacts } from '../engine/figures'
import type { Result } from '../errors'
import { knownFacts } from '../known-facts'
import { factOf } from '../units/fact-of'
import { boltConsequences, type Bolts } from './bolt-consequences'
import type { ConsequencesInput } from './consequences-input'
import { inRecordsNames } from './figure-names'
import { headsOnDeck } from './heads-on-deck'
import { intakeSide, type IntakeSide } from './intake-side'
import { valveConsequences, type ValveConsequences } from './valve-consequences'

/** Each an answer or a refusal that names the record's figures it needs. All lengths in inches, angles in degrees. */
export type Consequences = Bolts & {
  readonly ratioBefore: Result<number>
  readonly ratioAfter: Result<number>
  readonly intake: ValveConsequences
  readonly exhaust: ValveConsequences
  readonly intakeSide: Result<IntakeSide>
  readonly rocker: Result<RockerDrop>
  /** Null: the cam is not in the head. */
  readonly cam: Result<CamDrop> | null
}

/**
 * All that follows from a deck cut, on the head as it is now and on the engine it goes back to.
 *
 * @param input depths 0–0.5 in, cc 1–400; whatever else the records lack only leaves its own answer open
 *
 * Formulas and sources stand with each function. Places and angles are taken from the deck as it is now; bolts by the
 * whole lean since the holes were drilled and the length after all cuts, reach at the deepest place of all cuts, dowels
 * at their own place. Of several heads the one that comes off worst is said. Dowels hold the head sideways, so that the
 * slot is worked out with them. What comes off the intake side is for this cut alone.
 * Example: 18 thou flat → piston-to-valve loss 0.018, no slot, no spot face.
 */
export function consequences(input: ConsequencesInput): Consequences {
  const { cut, casting, engine, deepEdge } = input
  const heads = headsOnDeck(input.heads, casting, cut, deepEdge)
  const onDeck = heads[0]?.casting ?? casting
  const rocker = { xIn: onDeck.rockerXIn, zIn: onDeck.rockerZIn }
  const cam = { xIn: onDeck.camXIn, zIn: onDeck.camZIn }
  const holds = input.flatDeck ? 'pocketVolume' : 'chamberVolume'
  return {
    ratioBefore: ratioAt(engine, input.beforeCc, holds),
    ratioAfter: ratioAt(engine, input.finishedCc, holds),
    intake: valveConsequences(input, heads, 'intake'),
    exhaust: valveConsequences(input, heads, 'exhaust'),
    intakeSide: intakeSide({ ...input, casting: onDeck }),
    ...boltConsequences(input, heads),
    rocker: inRecordsNames(rockerDrop(cut, rocker, onDeck.dowelXIn), {
      xIn: 'rockerXIn',
      zIn: 'rockerZIn',
    }),
    cam: engine.camInHead ? inRecordsNames(camDrop(cut, cam, onDeck.dowelXIn), { xIn: 'camXIn', zIn: 'camZIn' }) : null,
  }
}

function ratioAt(
  engine: EngineFacts,
  chamberCc: number | null,
  holds: 'chamberVolume' | 'pocketVolume',
): Result<number> {
  const volumes = cylinderVolumes(engine)
  if (!volumes.ok) return volumes
  const chamber = knownFacts({ chamberCc: factOf('chamber volume', chamberCc, holds) })
  return chamber.ok ? compressionRatio(volumes.value, chamber.value.chamberCc, holds) : chamber
}
