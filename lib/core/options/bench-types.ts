import type { CastingFacts } from '../casting/figures'
import type { CutCaution } from '../cut/cautions'
import type { HeadNow } from '../cut/plan-types'
import type { EngineFacts } from '../engine/figures'
import type { RouteSettings } from '../route/types'
import type { StepId } from '../route/step-ids'
import type { WorkedPlan } from './plan-record-of'

/** A head to start from: the customer's own, or one that can be bought. */
export type Start = {
  readonly id: string
  readonly name: string
  readonly supply: 'own' | 'stock' | 'special'
  /** Bought in already cut: its maker did the seats after the cut. */
  readonly cutByMaker: boolean
  readonly used: boolean
  readonly casting: CastingFacts
  readonly chambers: number
  /** Valves in a flat face: cut to a thickness, or to clean up. */
  readonly flatDeck?: boolean
  readonly deepEdge: 'intake' | 'exhaust'
  readonly heads: readonly HeadNow[]
  readonly presentNominal: boolean
  readonly thouPerCc: number
  readonly rateWords: string
  readonly rateProven: boolean
  readonly leadDays: number | null
  readonly costMinor: number | null
}

export type BenchQuestion = {
  readonly targetCc: number | null
  /** Without a target: where a clean-up must stop. */
  readonly stopAtIn: number | null
  /** What seat work to come sinks the valves. */
  readonly sinkIn: number
  /** Of flat-deck heads: how thick they are to be; without it a clean-up. */
  readonly thicknessIn?: number | null
  readonly engine: EngineFacts
  readonly classFlatOnly: boolean
  readonly classMinCc: number | null
  readonly classMaxCutIn: number | null
  readonly starts: readonly Start[]
  readonly shop: BenchShop
}

/** What the shop itself brings to the answer. */
export type BenchShop = {
  readonly settings: RouteSettings
  readonly marginCc: number
  readonly angleCautionDeg: number
  readonly angleLimitDeg: number
  readonly ptvLeastIn: { readonly intake: number; readonly exhaust: number }
  /** Days a step is usually out at a vendor; absent: nothing has come back yet. */
  readonly outsideDays: Readonly<Partial<Record<StepId, number>>>
  /** Price of a step by the shop's list, in minor units; null: prices are not for this person. */
  readonly prices: Readonly<Partial<Record<StepId, number>>> | null
}

export const wayKinds = ['leave', 'clean-up', 'flat', 'equalise', 'angle-flat', 'angle', 'open'] as const
export type WayKind = (typeof wayKinds)[number]

export type WayStep = { readonly stepId: StepId; readonly label: string; readonly outside: boolean }

export type CutOption = {
  /** Stable name: start and kind. */
  readonly id: string
  readonly start: Start
  readonly kind: WayKind
  /** Null: ruled out before depths could be had, or nothing is cut. */
  readonly worked: WorkedPlan | null
  /** Finished mean of the chambers; null: not known. */
  readonly finishedCc: number | null
  /** What must be opened of a chamber, at the most; 0: nothing. */
  readonly opensCc: number
  /** Steps needed beyond those of a head that is left as it is. */
  readonly steps: readonly WayStep[]
  /** Vendors and lead time together; null: something of it is not known. */
  readonly days: number | null
  readonly priceMinor: number | null
  /** Steps that the price list has no price for. */
  readonly unpriced: readonly string[]
  readonly cautions: readonly CutCaution[]
  /** What rules it out; '' when nothing does. */
  readonly ruledOut: string
  /** Why it stands where it stands. */
  readonly why: string
}
