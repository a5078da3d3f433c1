import type { CastingFacts } from '../casting/figures'
import type { HeadNow, PlanAnswer } from '../cut/plan'
import { circleOutline } from '../cut/circle'
import { draftedVolume } from '../cut/drafted-volume'
import type { PlanRecord } from '../cut/plan-record'
import type { EngineFacts } from '../engine/figures'
import type { Refusal, Result } from '../errors'
import { consequences, type Consequences } from './consequences'
import { cutCautions } from './cut-cautions'
import { ports } from './valve-consequences'

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
  /** Least height of the sealing line over the new deck that the shop accepts; 0 when it says nothing. */
  readonly sealingMarginIn?: number
  /** The heads it is for, as they are now. */
  readonly heads: readonly HeadNow[]
}

/**
 * All that follows from a cut, for the plan's record: compression, intake side, piston-to-valve loss, in the core's units.
 * What cannot be computed is null, and `needs` says what would make it so. Each figure's formula and source stand with its
 * function. A plan without a cut has no losses to compute.
 */
export function planWithConsequences(input: WhatFollowsInput, follows = consequencesOf(input)): PlanRecord {
  const { plan } = input
  const isCut = plan.deepestIn > 0
  const needs = new Set<string>()
  const known = <T>(result: Result<T>): T | null => {
    if (result.ok) return result.value
    needs.add(needWords(result.refusal))
    return null
  }
  const ofCut = <T>(result: Result<T>): T | null => (isCut ? known(result) : null)
  const intakeLoss = ofCut(follows.intake.pistonToValve)
  const exhaustLoss = ofCut(follows.exhaust.pistonToValve)
  const side = ofCut(follows.intakeSide)
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
    intakeFace: side?.face ?? null,
    wallDraft: isCut ? wallDraftOf(input) : null,
    seats: isCut ? seatsOf(follows) : [],
    ptvLossIntakeIn: intakeLoss?.lossIn ?? null,
    ptvLossExhaustIn: exhaustLoss?.lossIn ?? null,
    compressionBefore: plan.presentMeanCc === null ? null : known(follows.ratioBefore),
    compressionAfter: plan.finishedCc === null ? null : known(follows.ratioAfter),
    needs: [...needs],
    cautions: [...plan.cautions, ...(isCut ? cutCautions(follows, input) : [])],
  }
}

/** The same, whole and in the core's terms, for a screen that shows more than a plan freezes. */
export function consequencesOf({ plan, casting, engine, deepEdge, sinkIn, heads }: WhatFollowsInput): Consequences {
  return consequences({
    cut: { flatIn: plan.flatIn, angleIn: plan.angleIn, milledWidthIn: casting.milledWidthIn },
    casting,
    engine,
    deepEdge,
    beforeCc: plan.presentMeanCc,
    finishedCc: plan.finishedCc,
    sinkIn,
    heads,
  })
}

/** How much a leaning wall changes what the cut takes: by a circle of the opening's area, on which it hangs only weakly. */
function wallDraftOf({ plan, casting }: WhatFollowsInput): PlanRecord['wallDraft'] {
  const { wallDraftDeg, openingAreaIn2, openingCentreIn, milledWidthIn } = casting
  if (!wallDraftDeg || openingAreaIn2 === undefined || openingCentreIn === undefined || milledWidthIn === undefined) {
    return null
  }
  // A part of what is taken hangs on the shape so weakly that 36 corners do, at every move of a slider.
  const outline = circleOutline({ areaIn2: openingAreaIn2, centreIn: openingCentreIn }).filter((_, at) => at % 5 === 0)
  const found = draftedVolume({ flatIn: plan.flatIn, angleIn: plan.angleIn, milledWidthIn }, outline, wallDraftDeg)
  if (!found.ok || plan.removesCc === null) return null
  return { deg: wallDraftDeg, lessCc: plan.removesCc * found.value.lessPart }
}

const seatsOf = (follows: Consequences): PlanRecord['seats'] =>
  ports.flatMap((port) => {
    const { sealing } = follows[port]
    if (!sealing.ok) return []
    const { tag, marginIn, ground } = sealing.value
    return [{ port, tag, marginIn, ground }]
  })

const needWords = (refusal: Refusal): string => refusal.message.replace(/^Needs /, 'needs ').replace(/\.$/, '')
