import type { CastingFacts } from '../casting/figures'
import type { HeadNow, PlanAnswer } from '../cut/plan'
import { circleOutline } from '../cut/circle'
import { draftedVolume } from '../cut/drafted-volume'
import type { PlanRecord } from '../cut/plan-record'
import type { EngineFacts } from '../engine/figures'
import type { Refusal, Result } from '../errors'
import { consequences, type Consequences } from './consequences'
import { flatDeckPlan } from '../flat-deck/plan-of-heads'
import { cutCautions } from './cut-cautions'
import { flatDeckCautions } from './flat-deck-cautions'
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
  readonly flatDeck?: { readonly wantedThicknessIn: number | null } | null
}

/** What each flat-deck head becomes; null: heads with chambers. */
export const flatDeckOf = ({ flatDeck, heads, plan, casting, sinkIn }: WhatFollowsInput) =>
  flatDeck ? flatDeckPlan(heads, plan, casting, sinkIn, plan.kind === 'flat' ? flatDeck.wantedThicknessIn : null) : null

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
  const flatDeck = flatDeckOf(input)
  const before = flatDeck ? flatDeck.beforeCc : plan.presentMeanCc
  const after = flatDeck ? flatDeck.afterCc : plan.finishedCc
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
    targetCc: flatDeck ? null : input.targetCc,
    predictedAfterCutCc: plan.afterCutCc,
    predictedFinishedCc: plan.finishedCc,
    seatWorkGivesCc: input.seatWorkGivesCc,
    intakeSideIn: side?.sideIn ?? null,
    intakeRailsIn: side?.railsIn ?? null,
    intakeFace: side?.face ?? null,
    wallDraft: isCut ? wallDraftOf(input) : null,
    seats: isCut && !flatDeck ? seatsOf(follows) : [],
    flatDeck: flatDeck && flatDeckRecord(input, flatDeck),
    ptvLossIntakeIn: intakeLoss?.lossIn ?? null,
    ptvLossExhaustIn: exhaustLoss?.lossIn ?? null,
    compressionBefore: before === null ? null : known(follows.ratioBefore),
    compressionAfter: after === null ? null : known(follows.ratioAfter),
    needs: [...needs],
    cautions: [
      ...plan.cautions,
      ...(isCut && flatDeck ? flatDeckCautions(flatDeck.heads, plan.flatIn) : []),
      ...(isCut ? cutCautions(follows, input) : []),
    ],
  }
}

const flatDeckRecord = (
  { flatDeck, plan, casting }: WhatFollowsInput,
  found: NonNullable<ReturnType<typeof flatDeckOf>>,
): PlanRecord['flatDeck'] => ({
  wantedThicknessIn: plan.kind === 'flat' ? (flatDeck?.wantedThicknessIn ?? null) : null,
  thicknessLeastIn: casting.thicknessLeastIn ?? null,
  heads: found.heads.map(({ tag, thicknessNowIn, thicknessLeftIn, after }) => ({
    tag,
    thicknessNowIn,
    thicknessLeftIn,
    valves: (after?.valves ?? []).map(({ valve, beforeIn, afterIn }) => ({ valve, beforeIn, afterIn })),
    injectors: (after?.injectors ?? []).map(({ chamber, beforeIn, afterIn }) => ({ chamber, beforeIn, afterIn })),
  })),
  beforeCc: found.beforeCc,
  afterCc: found.afterCc,
})

/** The same, whole and in the core's terms, for a screen that shows more than a plan freezes. */
export function consequencesOf(input: WhatFollowsInput): Consequences {
  const { plan, casting, engine, deepEdge, sinkIn, heads } = input
  const flatDeck = flatDeckOf(input)
  return consequences({
    cut: { flatIn: plan.flatIn, angleIn: plan.angleIn, milledWidthIn: casting.milledWidthIn },
    casting,
    engine,
    deepEdge,
    beforeCc: flatDeck ? flatDeck.beforeCc : plan.presentMeanCc,
    finishedCc: flatDeck ? flatDeck.afterCc : plan.finishedCc,
    sinkIn,
    heads,
    flatDeck: flatDeck !== null,
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
