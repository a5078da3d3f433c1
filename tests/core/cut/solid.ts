import Module from 'manifold-3d'
import type { OutlinePoint } from '../../../lib/core/cut/outline'

const wasm = await Module()
wasm.setup()
const { CrossSection, Manifold } = wasm

const ccPerIn3 = 16.387064

export type SolidCut = { readonly flatIn: number; readonly angleIn: number; readonly milledWidthIn: number }

/** What a cutter takes out of a chamber standing on the deck z = 0: the part of the solid under the cut plane, in cc. */
function under(chamber: InstanceType<typeof Manifold>, cut: SolidCut): number {
  const slope = cut.angleIn / cut.milledWidthIn
  const length = Math.hypot(slope, 1)
  const taken = chamber.trimByPlane([slope / length, 0, -1 / length], -cut.flatIn / length)
  return taken.volume() * ccPerIn3
}

/** High enough for any cut. */
const heightIn = 1
const corners = 240

/** A round chamber, its wall leaning inward by a draft. */
export function cutFromRound(
  cut: SolidCut,
  round: { readonly diameterIn: number; readonly centreIn: number; readonly draftDeg?: number },
): number {
  const { diameterIn, centreIn, draftDeg = 0 } = round
  // Corners a little outside the circle, so that the polygon has the circle's area.
  const step = (2 * Math.PI) / corners
  const radius = (diameterIn / 2) * Math.sqrt(step / Math.sin(step))
  const top = radius - heightIn * Math.tan((draftDeg * Math.PI) / 180)
  return under(Manifold.cylinder(heightIn, radius, top, corners).translate([centreIn, 0, 0]), cut)
}

/** A chamber of any outline with walls square to the deck. */
export function cutFromOutline(cut: SolidCut, outline: readonly OutlinePoint[]): number {
  const section = new CrossSection([outline.map(({ xIn, yIn }): [number, number] => [xIn, yIn])], 'EvenOdd')
  return under(section.extrude(heightIn), cut)
}

/** A square chamber with walls leaning inward by a draft. */
export function cutFromSquare(cut: SolidCut, sideIn: number, fromIn: number, draftDeg: number): number {
  const lean = heightIn * Math.tan((draftDeg * Math.PI) / 180)
  const square = (size: number, z: number): [number, number, number][] =>
    [-1, 1].flatMap((x) =>
      [-1, 1].map((y): [number, number, number] => [fromIn + sideIn / 2 + (x * size) / 2, (y * size) / 2, z]),
    )
  const points = [...square(sideIn, 0), ...square(sideIn - 2 * lean, heightIn)]
  return under(Manifold.hull(points), cut)
}
