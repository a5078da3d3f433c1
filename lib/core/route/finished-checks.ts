import { parseFigure } from '../units/parse-figure'
import { meanOrNull } from '../mean'

export const edges = ['intake', 'exhaust'] as const
export type Edge = (typeof edges)[number]

/** Thickness by corner as measured, in inches; corners that were not measured are absent. */
export type MeasuredCorners = Readonly<Partial<Record<string, number>>>

/**
 * Mean thickness of one edge, in inches; null when neither of its corners was measured. Edges, not corners, are held
 * against the mate's: its ends lie the other way round on the other bank.
 */
export function edgeThicknessIn(corners: MeasuredCorners, edge: Edge): number | null {
  const own = [corners[`${edge}-1`], corners[`${edge}-2`]].filter((value) => value !== undefined)
  return meanOrNull(own)
}

/** What finished figures say beyond the head's own limits; words: lib/words/finished.ts. */
export type FinishedCaution =
  | {
      readonly code: 'mate-differs'
      readonly tag: string
      readonly edge: Edge
      /** By how much the mate is thicker, in inches; below zero: thinner. */
      readonly thickerIn: number
      readonly limitIn: number
    }
  | { readonly code: 'rough-finish'; readonly microIn: number; readonly asked: string }

/**
 * Each edge at which the mate is thicker or thinner by more than the shop lets the heads of a pair differ.
 *
 * `limitIn`: inches, as set by the shop. Example: 4.4820 here, 4.4850 on the mate, limit 0.002 → 0.0030 thicker.
 */
export function mateDiffers(
  own: MeasuredCorners,
  mate: { readonly tag: string; readonly corners: MeasuredCorners },
  limitIn: number,
): readonly FinishedCaution[] {
  return edges.flatMap((edge) => {
    const [here, there] = [edgeThicknessIn(own, edge), edgeThicknessIn(mate.corners, edge)]
    if (here === null || there === null || Math.abs(there - here) <= limitIn + rounding) return []
    return [{ code: 'mate-differs' as const, tag: mate.tag, edge, thickerIn: there - here, limitIn }]
  })
}

/** Decimals are not exact in binary: 4.482 is still within 0.002 of 4.484. */
const rounding = 1e-9

/**
 * The roughest finish that was asked for, in µin; null when it was asked for in words only. The first figure with a unit
 * counts; without one, a figure after or before "Ra" is taken as µin.
 *
 * Example: "30 µin or better, steel gasket" → 30; "Ra 0.8 µm" → 31.5; "as the gasket maker says" → null.
 */
export function finishAskedMicroIn(asked: string): number | null {
  const plain = asked.replaceAll('μ', 'µ').replaceAll(/\b(?:u|micro)(?=in\b|m\b)/gi, 'µ')
  const found = /(\d+(?:[.,]\d+)?)\s*(µin|µm)/i.exec(plain)
  const bare = /\bRa\s*(\d+(?:[.,]\d+)?)|(\d+(?:[.,]\d+)?)\s*Ra\b/i.exec(plain)
  const text = found ? `${found[1] ?? ''} ${(found[2] ?? '').toLowerCase()}` : (bare?.[1] ?? bare?.[2] ?? '')
  const parsed = parseFigure(text, 'finish')
  return parsed.ok ? parsed.value.value : null
}

/** A finish that is rougher than asked; none when it is not, or when no figure was asked. */
export function roughFinish(microIn: number, asked: string): readonly FinishedCaution[] {
  const limit = finishAskedMicroIn(asked)
  return limit === null || microIn <= limit + rounding ? [] : [{ code: 'rough-finish', microIn, asked }]
}
