import type { CastingFacts } from '../casting/figures'
import type { DeckCut } from '../clearance/rigid-motion'
import type { EngineFacts } from '../engine/figures'
import { ok, refuse, type Result } from '../errors'
import type { FaceCut } from '../intake/face-cut'
import { inlineIntake } from '../intake/inline'
import { vIntake } from '../intake/v-engine'
import { figureName, inRecordsNames, type FigureKey } from './figure-names'

/** In inches; a side below zero is a gap. */
export type IntakeSide = {
  /** Off the face at the port centre; inline: how far the port comes down along the face. */
  readonly sideIn: number
  /** Off the manifold's end rails; null: an inline engine has none. */
  readonly railsIn: number | null
  /** At the two ends of the face; null: no wedge, or the face's height is not known. */
  readonly face: FaceCut | null
  /** Each a note of its own. */
  readonly notes: readonly string[]
  /** The figure hangs on a degree: not to be cut to without measuring. */
  readonly doubtful: boolean
}

/** What brings the ports of head and manifold together again, for an inline engine or a V. Formulas stand with each. */
export function intakeSide(input: {
  readonly cut: DeckCut
  readonly casting: CastingFacts
  readonly engine: EngineFacts
  readonly deepEdge: 'intake' | 'exhaust'
}): Result<IntakeSide> {
  const { cut, casting, engine, deepEdge } = input
  const { intakeFaceDeg, portXIn, portZIn, dowelXIn } = casting
  const place = { cut, intakeFaceDeg, portXIn, portZIn }
  if (engine.layout === 'unknown') {
    return refuse('missing', `Needs ${figureName('layout')}.`, { needs: ['layout'] })
  }
  if (engine.layout === 'inline') {
    const drop = inRecordsNames(inlineIntake(place), portNames)
    return drop.ok
      ? ok({ sideIn: drop.value.alongFaceIn, railsIn: null, face: null, notes: [], doubtful: false })
      : drop
  }
  const found = inRecordsNames(
    vIntake({
      ...place,
      deepEdge,
      bankAngleDeg: engine.bankAngleDeg,
      dowelXIn,
      faceHeightIn: casting.faceHeightIn ?? null,
    }),
    portNames,
  )
  if (!found.ok) return found
  const { sideIn, railIn, face, notes, doubtful } = found.value
  return ok({ sideIn, railsIn: railIn, face: cut.angleIn > 0 ? face : null, notes, doubtful })
}

/** A place across that the calculation of an inline engine calls by its own short name. */
const portNames: Readonly<Record<string, FigureKey>> = { xIn: 'portXIn', zIn: 'portZIn' }
