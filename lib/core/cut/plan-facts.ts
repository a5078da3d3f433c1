import { refuse, type Result } from '../errors'
import { knownFacts, type Fact } from '../known-facts'
import { factOf } from '../units/fact-of'
import type { HeadNow, PlanInput } from './plan-types'
import { shareFact } from './split'

/** Refuses a plan with an impossible figure; what is only unknown is let through. */
export function checkPlanFacts(input: PlanInput): Result<unknown> {
  if (input.heads.length === 0) return refuse('missing', 'Needs a head.', { needs: ['heads'] })
  const facts = { ...figuresOf(input), ...Object.assign({}, ...input.heads.map(headFigures)) }
  const given = Object.entries<Fact>(facts).filter(([, [, value]]) => value !== null && value !== undefined)
  return knownFacts(Object.fromEntries(given))
}

function figuresOf({ limits, ...input }: PlanInput): Record<string, Fact> {
  return {
    targetCc: factOf('target', input.targetCc, 'chamberVolume'),
    toleranceCc: factOf('tolerance', input.toleranceCc, 'volume'),
    seatWorkGivesCc: ['what the seat work adds', input.seatWorkGivesCc, 0, 20],
    thouPerCc: factOf('rate', input.thouPerCc, 'thouPerCc'),
    centroidShare: shareFact(input.centroidShare),
    milledWidthIn: factOf('milled width', input.milledWidthIn, 'milledWidth'),
    marginCc: ['what is left for us', input.marginCc, 0, 50],
    stopAtIn: ['stop-at limit of the clean-up', input.stopAtIn, 0.0005, 0.1],
    angleLimitDeg: factOf('largest angle', limits.angleLimitDeg, 'angle'),
    angleCautionDeg: factOf('angle of caution', limits.angleCautionDeg, 'angle'),
    thicknessNewIn: factOf('thickness when new', limits.thicknessNewIn, 'thickness'),
    thicknessLeastIn: factOf('least thickness', limits.thicknessLeastIn, 'thickness'),
    classMinCc: factOf('smallest chamber of the class', limits.classMinCc, 'chamberVolume'),
    classMaxCutIn: factOf('deepest cut of the class', limits.classMaxCutIn, 'cutDepth'),
  }
}

function headFigures({ tag, chambersCc, thicknessIn, removedBeforeIn }: HeadNow): Record<string, Fact> {
  const chambers = chambersCc.map((cc, at): [string, Fact] => {
    const label = `${tag} chamber ${at + 1}`
    return [label, factOf(label, cc, 'chamberVolume')]
  })
  return {
    ...Object.fromEntries(chambers),
    [`${tag} thickness`]: factOf(`${tag} thickness`, thicknessIn, 'thickness'),
    [`${tag} removed`]: [`${tag} metal gone before`, removedBeforeIn, 0, 2],
  }
}
