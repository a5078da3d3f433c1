import { leanShiftShownIn } from '../core/straightness/lean-shift'
import type { CornerInset } from '../core/straightness/corner-inset'
import { formatFigure, formatThou } from '../core/units/format-figure'

/** "corners touched 0.500 in inside edges and ends". */
export function insetWords({ edgeIn, endIn }: CornerInset): string {
  const [edge, end] = [formatFigure(edgeIn, 'cornerInset'), formatFigure(endIn, 'cornerInset')]
  const where = edge === end ? `${edge} inside edges and ends` : `${edge} inside the edges, ${end} inside the ends`
  return `corners touched ${where}`
}

/** What stands beside the flat part on a head that leaned before the cut; '' when it is too small to matter. */
export function leanShiftWords(shiftIn: number | null): string {
  if (shiftIn === null || Math.abs(shiftIn) <= leanShiftShownIn) return ''
  const how = shiftIn > 0 ? 'more' : 'less'
  return `this head leaned before: the flat part reads ${formatThou(Math.abs(shiftIn))} ${how} than was cut`
}
