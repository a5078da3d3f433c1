import { makePlan, type PlanInput } from '../../lib/core/cut/plan'
import { waysOf } from '../../lib/core/options/ways'
import { completeness } from '../../lib/core/route/completeness'
import { computeRoute } from '../../lib/core/route/compute-route'
import type { RouteFacts } from '../../lib/core/route/types'
import { question, start } from '../core/options/bench'
import { angleFlat, Visit } from '../core/route/visit'
import { secondsOf, type Figure } from './measure'

const facts: RouteFacts = Visit.of({
  used: true,
  targetCc: 60,
  hasEngineData: true,
  manifoldSpansHeads: true,
  plan: angleFlat(0.063, 0.02),
  ordered: ['flow-before', 'flow-after', 'assemble', 'leak'],
}).facts

const head = (tag: string) => ({ tag, chambersCc: [70, 70.2, 69.9, 70.1], thicknessIn: 4.25 })
const plan: PlanInput = {
  kind: 'angle-flat',
  heads: [head('T-0001'), head('T-0002')],
  targetCc: 60,
  toleranceCc: 0.5,
  seatWorkGivesCc: 0.3,
  thouPerCc: 6,
  centroidShare: 0.635,
  milledWidthIn: 6,
  split: { by: 'margin' },
  marginCc: 1,
  stopAtIn: null,
  limits: {
    angleCautionDeg: 0.5,
    angleLimitDeg: 1,
    thicknessNewIn: 4.25,
    thicknessLeastIn: 4.1,
    classFlatOnly: false,
    classMinCc: null,
    classMaxCutIn: null,
  },
}

/** What the pure core does in a second, in this process. */
export function coreFigures(): Figure[] {
  const perHead = secondsOf(() => {
    // A new object each time: a route that is known already would not be worked out again.
    const fresh = { ...facts }
    makePlan(plan)
    computeRoute(fresh)
    completeness(fresh)
  })
  const asked = question({
    starts: [start(), start({ id: 'stock', supply: 'stock' }), start({ id: 'cut', cutByMaker: true })],
  })
  const answer = secondsOf(() => waysOf(asked))
  return [
    {
      work: 'plan + route + completeness of a head',
      measured: 1 / perHead,
      unit: 'a second',
      goal: '> 8,000',
      met: 1 / perHead > 8000,
    },
    {
      work: 'cut bench, all ways from three heads',
      measured: answer * 1000,
      unit: 'ms',
      goal: '< 4 at a quarter of the speed',
      met: answer * 1000 < 4,
    },
  ]
}
