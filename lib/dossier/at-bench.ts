import { benchFigures, type BenchInput, type HoleSlot } from '@/lib/core/at-bench/bench-figures'
import { chambersNow } from '@/lib/core/at-bench/chambers-now'
import { sinkFigures, type SinkInput } from '@/lib/core/at-bench/sink-figures'
import type { BenchFigure } from '@/lib/core/at-bench/bench-figure'
import type { PlanRecord } from '@/lib/core/cut/plan-record'
import { sinkVolumeCc } from '@/lib/core/cut/volume'
import { slotAfterCuts } from '@/lib/core/head-now/hole-slot'
import { consequences } from '@/lib/core/options/consequences'
import type { RouteStep } from '@/lib/core/route/types'
import { chamberOf, oneOfEach, portOf } from '@/lib/core/readings/valves'
import { valveSheet } from '@/lib/core/valve-sheet/sheet'
import { wantedAtStep } from '@/lib/core/wanted/at-step'
import { shopCutOf } from '@/lib/core/rate/shop-cut'
import { cutFactsOf } from './cut-facts'
import type { Dossier } from './dossier'
import { headNow } from './head-now'
import { cornersOfStep } from './measured-cut'
import { deckOf } from './route-facts'

/** The figures of one step of a head: what is wanted there, and what follows from the plan of the day and the cut. */
export function benchFiguresOf(dossier: Dossier, step: RouteStep): readonly BenchFigure[] {
  const { plan, wanted } = dossier
  return [
    ...wantedAtStep(step.stepId, wanted).map((line) => ({ code: 'wanted', line }) as const),
    ...(step.stepId === 'seat-work' ? sinkFigures(sinkInput(dossier)) : []),
    ...(plan === null ? [] : benchFigures(step.stepId, inputOf(dossier, plan, step))),
  ]
}

type Parts = { readonly flatIn: number; readonly angleIn: number }

const cutIsOpen = ({ route }: Dossier): boolean =>
  route.some(
    ({ stepId, state }) =>
      (stepId === 'flat-cut' || stepId === 'angle-cut') && !['done', 'not needed', 'waived'].includes(state),
  )

/** As measured once all deck cuts are done; until then as planned. */
function cutOfDay(dossier: Dossier, plan: PlanRecord): Parts {
  const edges = cutIsOpen(dossier) ? null : (shopCutOf(cutFactsOf(dossier))?.edges ?? null)
  if (edges === null || edges.deepIn < edges.shallowIn) return { flatIn: plan.flatIn, angleIn: plan.angleIn }
  return { flatIn: edges.shallowIn, angleIn: edges.deepIn - edges.shallowIn }
}

function inputOf(dossier: Dossier, plan: PlanRecord, step: RouteStep): BenchInput {
  const { casting, engine, visit, settings, facts } = dossier
  const parts = cutOfDay(dossier, plan)
  const cut = { ...parts, milledWidthIn: casting.milledWidthIn }
  const order = facts.orders.find(({ orderId }) => orderId === step.orderId)
  return {
    follows: consequences({
      cut,
      casting,
      engine,
      deepEdge: plan.deepEdge,
      beforeCc: plan.presentMeanCc,
      finishedCc: plan.predictedFinishedCc,
      sinkIn: 0,
      heads: [headNow(dossier).head],
    }),
    cut: parts,
    ordered: order ? { flatIn: order.flatIn, angleIn: order.angleIn } : null,
    deck: deckOf(visit, casting, settings),
    spotFaceAcrossIn: casting.spotFaceIn ?? null,
    holes: holesOf(dossier, plan, cut),
    cornersBefore: cornersOfStep(dossier.newest, 'thickness'),
    targetCc: visit.targetCc,
    toleranceCc: settings.ccToleranceCc,
    straightIn: { across: settings.straightAcrossIn, along: settings.straightAlongPerCylinderIn * dossier.chambers },
    finishAsked: visit.job.finishAsked,
    ptvLeastIn: { intake: settings.ptvLeastIntakeIn, exhaust: settings.ptvLeastExhaustIn },
    flatDeck: facts.flatDeck?.limits ?? null,
    circleIn: { intake: casting.intakeTopCutIn ?? null, exhaust: casting.exhaustTopCutIn ?? null },
  }
}

/** The chambers as they are at the seat bench: what was sunk since each was read is in it. */
function sinkInput(dossier: Dossier): SinkInput {
  const { casting, settings, plan, facts } = dossier
  return {
    targetCc: facts.targetCc,
    toleranceCc: settings.ccToleranceCc,
    casting,
    chambers: chambersNow(cutFactsOf(dossier)).map(({ chamber, cc, seq, isReckoned }) => ({
      chamber,
      cc: cc + sunkSinceCc(dossier, chamber, seq),
      isReckoned,
    })),
    cutToCome: plan !== null && cutIsOpen(dossier) ? { seatWorkGivesCc: plan.seatWorkGivesCc } : null,
  }
}

/** What the sink typed since adds to one chamber, valve by valve; a valve without a size on record adds nothing. */
function sunkSinceCc({ newest, casting, chambers, facts }: Dossier, chamber: string, seq: number): number {
  const sunk = newest.filter((reading) => reading.kind === 'sink' && reading.seq > seq)
  const sheet = valveSheet(sunk, { chambers, valves: facts.valves ?? oneOfEach })
  const cells = sheet.columns.find(({ column }) => column.kind === 'sink')?.cells ?? []
  return cells
    .filter(({ point }) => chamberOf(point) === chamber)
    .reduce((sum, { point, reading }) => {
      const diameterIn = portOf(point) === 'exhaust' ? casting.exhaustValveIn : casting.intakeValveIn
      const added = diameterIn === undefined ? null : sinkVolumeCc(diameterIn, reading?.value ?? 0)
      return sum + (added?.ok ? added.value : 0)
    }, 0)
}

/** Each hole on record whose slot can be worked out. */
function holesOf(
  { visit, casting, metalGone }: Dossier,
  { deepEdge }: PlanRecord,
  cut: Parts & { readonly milledWidthIn: number | undefined },
): readonly HoleSlot[] {
  const before = metalGone.ok ? metalGone.value.gone : null
  return (visit.head.casting?.bolts ?? []).flatMap(({ label, lengthIn, diameterIn, boltIn, xIn }) => {
    const hole = {
      lengthNewIn: lengthIn ?? casting.boltHoleLengthIn,
      holeDiameterIn: diameterIn ?? casting.boltHoleIn,
      boltDiameterIn: boltIn ?? casting.boltIn,
      fromShallowEdgeIn: xIn,
    }
    const slot = slotAfterCuts(hole, before, cut, deepEdge)
    return slot.ok ? [{ label, slotIn: slot.value.slotIn }] : []
  })
}
