import type { SectionPoint } from '@/lib/core/clearance/rigid-motion'
import type { Port } from '@/lib/core/options/valve-consequences'
import type { SectionGeometry } from './cut-section-types'
import type { Point } from './marks'

/** Sizes of a drawing, in millimetres. */
export type CutSectionLook = {
  readonly widthMm: number
  readonly marginMm: number
  readonly smallMm: number
  readonly textMm: number
  readonly figureMm: number
  readonly rowMm: number
  readonly stripMm: number
  /** No larger than this an inch, or a narrow head would fill the page. */
  readonly mostMmPerIn: number
  readonly hatchMm: number
  readonly lineMm: number
  /** The notes stand beside the list of places, not under it. */
  readonly notesBeside: boolean
}

export const wideLook: CutSectionLook = {
  widthMm: 180,
  marginMm: 17,
  smallMm: 3,
  textMm: 3.4,
  figureMm: 4.6,
  rowMm: 4.4,
  stripMm: 15,
  mostMmPerIn: 30,
  hatchMm: 2.2,
  lineMm: 0.5,
  notesBeside: true,
}

/** Of a telephone's width, 3.2 mm of 90 are more than 11 px. */
export const narrowLook: CutSectionLook = {
  widthMm: 90,
  marginMm: 7,
  smallMm: 3.2,
  textMm: 3.4,
  figureMm: 4.4,
  rowMm: 4.4,
  stripMm: 14,
  mostMmPerIn: 18,
  hatchMm: 1.8,
  lineMm: 0.4,
  notesBeside: false,
}

/** Where the section lies on the sheet. */
export type Frame = {
  readonly look: CutSectionLook
  readonly mmPerIn: number
  /** Left and right end of the deck: the intake edge and the exhaust edge, whichever is deep. */
  readonly leftX: number
  readonly rightX: number
  /** Where the section is broken off. */
  readonly topY: number
  /** The old deck. */
  readonly deckY: number
  readonly place: (point: SectionPoint) => Point
}

export function frameOf({ widthIn, topIn, valves }: SectionGeometry, deepEdge: Port, look: CutSectionLook): Frame {
  const mmPerIn = Math.min((look.widthMm - 2 * look.marginMm) / widthIn, look.mostMmPerIn)
  const leftX = (look.widthMm - widthIn * mmPerIn) / 2
  const topY = valves.length > 0 ? look.textMm + 7 : 4
  const deckY = topY + topIn * mmPerIn
  const fromLeft = (xIn: number) => (deepEdge === 'exhaust' ? xIn : widthIn - xIn)
  return {
    look,
    mmPerIn,
    leftX,
    rightX: leftX + widthIn * mmPerIn,
    topY,
    deckY,
    place: ({ xIn, zIn }) => [leftX + fromLeft(xIn) * mmPerIn, deckY - zIn * mmPerIn],
  }
}
