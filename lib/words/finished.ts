import type { FinishedCaution } from '../core/route/finished-checks'
import { formatFigure } from '../core/units/format-figure'

/** "T-0402, its mate, is 0.0030 in thicker at the intake edge (the pair may differ by 0.0020 in)" */
export function finishedCautionText(caution: FinishedCaution): string {
  if (caution.code === 'rough-finish') {
    return `The finish is ${formatFigure(caution.microIn, 'finish')}, rougher than asked (${caution.asked})`
  }
  const { tag, edge, thickerIn, limitIn } = caution
  const how = `${formatFigure(Math.abs(thickerIn), 'depth')} ${thickerIn > 0 ? 'thicker' : 'thinner'}`
  return `${tag}, its mate, is ${how} at the ${edge} edge (the pair may differ by ${formatFigure(limitIn, 'depth')})`
}
