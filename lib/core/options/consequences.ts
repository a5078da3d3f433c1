import type { ConsequencesInput } from './consequences-input'
import { boltHoleSlot, spotFaceDepth, type BoltHole } from '../clearance/bolt-hole'
import { boltReach, dowelFit, type Reach } from '../clearance/bolt-reach'
import { camDrop, rockerDrop, type CamDrop, type RockerDrop } from '../clearance/point-drop'
import type { DeckCut } from '../clearance/rigid-motion'
import { compressionRatio, cylinderVolumes } from '../compression/ratio'
import type { EngineFacts } from '../engine/figures'
import type { Result } from '../errors'
import { knownFacts } from '../known-facts'
import { factOf } from '../units/fact-of'
import { inRecordsNames, type FigureKey } from './figure-names'
import { intakeSide, type IntakeSide } from './intake-side'
import { valveConsequences, type ValveConsequences } from './valve-consequences'

/** Each an answer or a refusal that names the record's figures it needs. All lengths in inches, angles in degrees. */
export type Consequences = {
  readonly ratioBefore: Result<number>
  readonly ratioAfter: Result<number>
  readonly intake: ValveConsequences
  readonly exhaust: ValveConsequences
  readonly intakeSide: Result<IntakeSide>
  readonly boltHole: Result<BoltHole>
  readonly spotFaceIn: Result<number>
  readonly boltReach: Result<Reach>
  readonly dowelFit: Result<Reach>
  readonly rocker: Result<RockerDrop>
  /** Null: the cam is not in the head. */
  readonly cam: Result<CamDrop> | null
}

/**
 * All that follows from a deck cut, on the head and on the engine it goes back to.
 *
 * @param input depths 0–0.5 in, cc 1–400; whatever else the records lack only leaves its own answer open
 *
 * Formulas and sources stand with each function. Bolts and dowels are taken at the deepest place of the cut, which can
 * only overstate what is gone there; dowels hold the head sideways, so that the slot is worked out with them.
 * Example: 18 thou flat → piston-to-valve loss 0.018, no slot, no spot face.
 */
export function consequences(input: ConsequencesInput): Consequences {
  const { cut, casting, engine, totalGoneIn } = input
  const spot = inRecordsNames(spotFaceDepth(cut, casting.spotFaceIn), { spotFaceIn: 'spotFaceIn' })
  const rocker = { xIn: casting.rockerXIn, zIn: casting.rockerZIn }
  const cam = { xIn: casting.camXIn, zIn: casting.camZIn }
  return {
    ratioBefore: ratioAt(engine, input.beforeCc),
    ratioAfter: ratioAt(engine, input.finishedCc),
    intake: valveConsequences(input, 'intake'),
    exhaust: valveConsequences(input, 'exhaust'),
    intakeSide: intakeSide(input),
    boltHole: inRecordsNames(
      boltHoleSlot({
        cut,
        holeLengthIn: holeLengthAfter(casting.boltHoleLengthIn, cut),
        holeDiameterIn: casting.boltHoleIn,
        boltDiameterIn: casting.boltIn,
        dowels: true,
      }),
      boltNames,
    ),
    spotFaceIn: spot,
    boltReach: spot.ok ? inRecordsNames(boltReach(totalGoneIn, spot.value, casting.threadLeftIn), goneNames) : spot,
    dowelFit: inRecordsNames(dowelFit(totalGoneIn, casting.dowelDepthIn), goneNames),
    rocker: inRecordsNames(rockerDrop(cut, rocker, casting.dowelXIn), {
      xIn: 'rockerXIn',
      zIn: 'rockerZIn',
    }),
    cam: engine.camInHead
      ? inRecordsNames(camDrop(cut, cam, casting.dowelXIn), { xIn: 'camXIn', zIn: 'camZIn' })
      : null,
  }
}

const boltNames: Readonly<Record<string, FigureKey>> = {
  holeLengthIn: 'boltHoleLengthIn',
  holeDiameterIn: 'boltHoleIn',
  boltDiameterIn: 'boltIn',
}

const goneNames: Readonly<Record<string, FigureKey>> = {
  totalGoneIn: 'thicknessNewIn',
  threadLeftIn: 'threadLeftIn',
  spareDepthIn: 'dowelDepthIn',
}

/** The record's length is that of the head as it was. Where the cut is deepest more goes off than this: a hole is then shorter, and its slot smaller. */
const holeLengthAfter = (lengthIn: number | undefined, { flatIn }: DeckCut): number | undefined =>
  lengthIn === undefined ? undefined : lengthIn - flatIn

function ratioAt(engine: EngineFacts, chamberCc: number | null): Result<number> {
  const volumes = cylinderVolumes(engine)
  if (!volumes.ok) return volumes
  const chamber = knownFacts({ chamberCc: factOf('chamber volume', chamberCc, 'chamberVolume') })
  return chamber.ok ? compressionRatio(volumes.value, chamber.value.chamberCc) : chamber
}
