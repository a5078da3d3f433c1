import { defaultExpectedLimits } from '@/lib/core/expected/limits'
import type { TypedFigure } from '@/lib/core/expected/questions'
import { questionsOf } from '@/lib/core/expected/questions'
import type { ExpectedFacts } from '@/lib/core/expected/types'
import { must } from '@/lib/core/errors'
import { readingSpecs } from '@/lib/core/readings/specs'
import type { ReadingKind } from '@/lib/core/readings/types'
import { parseFigure } from '@/lib/core/units/parse-figure'

/** A head of four chambers about which nothing is known but the limits. */
export const unknownHead: ExpectedFacts = {
  stepId: 'chambers',
  chambers: 4,
  limits: defaultExpectedLimits,
  here: {},
  before: {},
  mate: {},
  deepEdge: 'exhaust',
  milledWidthIn: null,
  edgeInsetIn: null,
  cut: { shallowIn: 0, deepIn: 0 },
  millDepthIn: 0,
  chamber: {
    repeatabilityCc: 0.3,
    divisionCc: 0.2,
    uBeforeCc: {},
    centroidShare: null,
    rate: null,
    depthErrorThou: 0.5,
    nominalLessGoneCc: null,
    workedSince: false,
  },
  thickness: { newIn: null, goneIn: null },
  seats: {
    intake: { recordNowIn: null, xIn: null, radiusIn: null, valveAngleDeg: null },
    exhaust: { recordNowIn: null, xIn: null, radiusIn: null, valveAngleDeg: null },
  },
  seatWorkSince: false,
  mill: { adviceIn: null, planFlatIn: null, planAngleIn: null, leftIn: null, lastTotalIn: null, touchedOffAnew: false },
  straightness: { acrossIn: 0.002, alongIn: 0.004 },
  runBefore: {},
  leakCfm: null,
  wanted: {},
  liftIn: { intake: null, exhaust: null },
  shimsIn: [],
}

/** As typed: "cc|1" → "63.9". */
export const typedFigures = (typed: Readonly<Record<string, string>>): TypedFigure[] =>
  Object.entries(typed).map(([key, text]) => {
    const [kind = '', point = ''] = key.split('|')
    const parsed = must(parseFigure(text, readingSpecs[kind as ReadingKind].quantity!))
    return { kind: kind as ReadingKind, point, text: parsed.text, unit: parsed.unit, value: parsed.value }
  })

export const asked = (facts: ExpectedFacts, typed: Readonly<Record<string, string>>) =>
  questionsOf(typedFigures(typed), facts)
