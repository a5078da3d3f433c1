import type { BenchQuestion, Start } from '@/lib/core/options/bench-types'
import { defaultShopSettings } from '@/lib/core/shop/settings'
import type { CastingFacts } from '@/lib/core/casting/figures'
import type { EngineFacts } from '@/lib/core/engine/figures'

/**
 * An invented wedge head. 10.1706 in² is 6.0 thou per cc and a centre at 0.635 of the width makes 20 thou flat and 63 thou
 * at the edge take 10 cc [common practice].
 */
export const wedge: CastingFacts = {
  milledWidthIn: 7,
  thicknessNewIn: 4.5,
  thicknessLeastIn: 4.3,
  landNewIn: 0.5,
  landLeastIn: 0.4,
  landXIn: 0,
  largestAngleDeg: 1,
  nominalCc: 64,
  openingAreaIn2: 10.1706,
  openingCentreIn: 0.635 * 7,
}

export const engine: EngineFacts = { layout: 'unknown', camInHead: null }

export const start = (more: Partial<Start> = {}): Start => ({
  id: 'own',
  name: 'The head at hand',
  supply: 'own',
  cutByMaker: false,
  used: false,
  casting: wedge,
  chambers: 4,
  deepEdge: 'exhaust',
  heads: [{ tag: 'the head', chambersCc: [64], thicknessIn: 4.5, removedBeforeIn: 0 }],
  presentNominal: true,
  thouPerCc: 6,
  rateWords: '',
  rateProven: false,
  leadDays: 0,
  costMinor: 0,
  ...more,
})

export const holding = (...chambersCc: number[]): Start['heads'] => [
  { tag: 'the head', chambersCc, thicknessIn: 4.5, removedBeforeIn: 0 },
]

export const question = (more: Partial<BenchQuestion> = {}): BenchQuestion => ({
  targetCc: 61,
  stopAtIn: null,
  sinkIn: 0,
  engine,
  classFlatOnly: false,
  classMinCc: null,
  classMaxCutIn: null,
  starts: [start()],
  shop: {
    settings: defaultShopSettings,
    marginCc: 1,
    angleCautionDeg: 0.5,
    angleLimitDeg: 1,
    ptvLeastIn: { intake: 0.08, exhaust: 0.1 },
    outsideDays: { 'angle-cut': 9 },
    prices: null,
  },
  ...more,
})
