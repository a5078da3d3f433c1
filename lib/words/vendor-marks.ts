import { marksAgainst } from '../core/straightness/marks-against'
import type { VendorMarks } from '../core/straightness/vendor-marks'
import { formatThou } from '../core/units/format-figure'

/** "20 thou flat, 63 thou angle part"; "83 thou in all at the exhaust edge". */
export function marksText({ flatIn, angleIn, angleDeg, deepIn, edge }: VendorMarks): string {
  const at = edge === null ? 'at the deep edge' : `at the ${edge} edge`
  const parts = [
    flatIn === null ? '' : `${formatThou(flatIn)} flat`,
    angleIn === null ? '' : `${formatThou(angleIn)} angle part`,
    angleDeg === null ? '' : `${angleDeg}°`,
    deepIn === null ? '' : `${formatThou(deepIn)} in all ${at}`,
  ]
  return parts.filter((part) => part !== '').join(', ')
}

/** One way to read the marks, and what the corners say to it. */
export function readingAgainstText(
  marks: VendorMarks,
  measured: { readonly flatIn: number; readonly angleIn: number },
  toleranceIn: number,
): string {
  const { offIn, agrees } = marksAgainst(marks, measured, toleranceIn)
  if (offIn === null) return marksText(marks)
  return `${marksText(marks)}: the corners ${agrees ? 'agree' : 'do not agree'}, off by ${formatThou(offIn)}`
}
