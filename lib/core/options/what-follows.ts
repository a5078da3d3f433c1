import type { CastingFacts } from '../casting/figures'
import { pistonToValve } from '../clearance/piston-to-valve'
import type { DeckCut } from '../clearance/rigid-motion'
import { compressionRatio, cylinderVolumes } from '../compression/ratio'
import type { PlanAnswer } from '../cut/plan'
import type { PlanRecord } from '../cut/plan-record'
import type { EngineFacts } from '../engine/figures'
import type { Refusal, Result } from '../errors'
import { inlineIntake } from '../intake/inline'
import { vIntake } from '../intake/v-engine'

export type WhatFollowsInput = {
  readonly plan: PlanAnswer
  readonly casting: CastingFacts
  readonly engine: EngineFacts
  readonly deepEdge: 'intake' | 'exhaust'
  readonly thouPerCc: number
  readonly rateWords: string
  readonly presentNominal: boolean
  readonly targetCc: number | null
  readonly seatWorkGivesCc: number
  /** Sink of the seats that the planned seat work brings, in inches. */
  readonly sinkIn: number
  readonly ptvLeastIn: { readonly intake: number; readonly exhaust: number }
}

/**
 * All that follows from a cut, for the plan's record: compression, intake side, piston-to-valve loss, in the core's units.
 * What cannot be computed is null, and `needs` says what would make it so. Each figure's formula and source stand with its
 * function. A plan without a cut has no losses to compute.
 */
export function whatFollows(input: WhatFollowsInput): PlanRecord {
  const { plan, engine } = input
  const cut: DeckCut = {
    flatIn: plan.flatIn,
    angleIn: plan.angleIn,
    milledWidthIn: input.casting.milledWidthIn,
  }
  const isCut = plan.deepestIn > 0
  const needs = new Set<string>()
  const known = <T>(result: Result<T>): T | null => {
    if (result.ok) return result.value
    needs.add(needWords(result.refusal))
    return null
  }
  const loss = (port: 'intake' | 'exhaust') => (isCut ? known(valveLoss(input, cut, port)) : null)
  const intakeLoss = loss('intake')
  const exhaustLoss = loss('exhaust')
  const side = isCut ? known(intakeSide(input, cut)) : null
  const ratio = (cc: number | null) => (cc === null ? null : known(ratioAt(engine, cc)))
  return {
    kind: plan.kind,
    flatIn: plan.flatIn,
    angleIn: plan.angleIn,
    angleDeg: plan.angleDeg,
    deepEdge: input.deepEdge,
    deepestIn: plan.deepestIn,
    depthAtCentroidIn: plan.depthAtCentroidIn,
    thouPerCc: input.thouPerCc,
    rateWords: input.rateWords,
    presentMeanCc: plan.presentMeanCc,
    presentNominal: input.presentNominal,
    targetCc: input.targetCc,
    predictedAfterCutCc: plan.afterCutCc,
    predictedFinishedCc: plan.finishedCc,
    seatWorkGivesCc: input.seatWorkGivesCc,
    intakeSideIn: side?.sideIn ?? null,
    intakeRailsIn: side?.railsIn ?? null,
    ptvLossIntakeIn: intakeLoss?.lossIn ?? null,
    ptvLossExhaustIn: exhaustLoss?.lossIn ?? null,
    compressionBefore: ratio(plan.presentMeanCc),
    compressionAfter: ratio(plan.finishedCc),
    needs: [...needs],
    cautions: [
      ...plan.cautions,
      ...clearanceCaution('intake', intakeLoss?.remainingIn, input.ptvLeastIn.intake),
      ...clearanceCaution('exhaust', exhaustLoss?.remainingIn, input.ptvLeastIn.exhaust),
    ],
  }
}

const needWords = (refusal: Refusal): string =>
  refusal.message.replace(/^Needs /, 'needs ').replace(/\.$/, '')

function valveLoss({ casting, engine, sinkIn }: WhatFollowsInput, cut: DeckCut, port: 'intake' | 'exhaust') {
  const intake = port === 'intake'
  return pistonToValve({
    cut,
    valve: {
      xIn: intake ? casting.intakeValveXIn : casting.exhaustValveXIn,
      zIn: intake ? casting.intakeValveZIn : casting.exhaustValveZIn,
      diameterIn: intake ? casting.intakeValveIn : casting.exhaustValveIn,
      valveAngleDeg: intake ? casting.intakeValveAngleDeg : casting.exhaustValveAngleDeg,
    },
    liftIn: intake ? engine.intakeLiftIn : engine.exhaustLiftIn,
    sinkIn,
    dowelXIn: casting.dowelXIn,
    measuredIn: intake ? engine.intakePtvIn : engine.exhaustPtvIn,
  })
}

function intakeSide(
  { casting, engine, deepEdge }: WhatFollowsInput,
  cut: DeckCut,
): Result<{ readonly sideIn: number; readonly railsIn: number | null }> {
  const place = {
    cut,
    intakeFaceDeg: casting.intakeFaceDeg,
    portXIn: casting.portXIn,
    portZIn: casting.portZIn,
  }
  if (engine.layout === 'unknown') {
    return { ok: false, refusal: { code: 'missing', message: 'Needs the engine’s layout, inline or V.' } }
  }
  if (engine.layout === 'inline') {
    const drop = inlineIntake(place)
    return drop.ok ? { ok: true, value: { sideIn: drop.value.alongFaceIn, railsIn: null } } : drop
  }
  const found = vIntake({
    ...place,
    deepEdge,
    bankAngleDeg: engine.bankAngleDeg,
    dowelXIn: casting.dowelXIn,
    faceHeightIn: casting.faceHeightIn ?? null,
  })
  return found.ok ? { ok: true, value: { sideIn: found.value.sideIn, railsIn: found.value.railIn } } : found
}

function ratioAt(engine: EngineFacts, chamberCc: number): Result<number> {
  const volumes = cylinderVolumes(engine)
  return volumes.ok ? compressionRatio(volumes.value, chamberCc) : volumes
}

function clearanceCaution(port: string, remainingIn: number | null | undefined, leastIn: number): string[] {
  if (remainingIn === null || remainingIn === undefined || remainingIn >= leastIn) return []
  return [
    `Piston to ${port} valve would be about ${remainingIn.toFixed(3)} in; the shop asks for ${leastIn.toFixed(3)}. An estimate: contact destroys an engine, so check the clearance at assembly.`,
  ]
}
