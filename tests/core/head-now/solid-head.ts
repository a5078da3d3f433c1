import Module from 'manifold-3d'

const wasm = await Module()
wasm.setup()
const { Manifold } = wasm
type Solid = InstanceType<typeof Manifold>

export type SolidCut = { readonly flatIn: number; readonly angleIn: number; readonly deepEdge: 'intake' | 'exhaust' }

export type SolidSeat = {
  readonly radiusIn: number
  readonly fromIntakeEdgeIn: number
  readonly heightIn: number
  /** Positive: it opens toward the exhaust edge. */
  readonly valveAngleDeg: number
  readonly cantDeg?: number
}

const corners = 720
const degrees = (rad: number): number => (rad * 180) / Math.PI

/**
 * A head as a block standing on its deck, intake edge at x = 0, with the disc of one seat in it. The disc is a thin
 * cylinder about the valve's axis whose lower face is the sealing circle.
 */
export class SolidHead {
  private block: Solid
  private disc: Solid

  constructor(
    readonly widthIn: number,
    seat: SolidSeat,
  ) {
    this.block = Manifold.cube([widthIn, 20, 4.5])
    const { radiusIn, fromIntakeEdgeIn, heightIn, valveAngleDeg, cantDeg = 0 } = seat
    // The way the valve opens is down, turned to the exhaust edge by the one angle and to end 2 by the other.
    const [across, along] = [Math.tan((valveAngleDeg * Math.PI) / 180), Math.tan((cantDeg * Math.PI) / 180)]
    const lean = degrees(Math.atan(Math.hypot(across, along)))
    const toward = degrees(Math.atan2(along, across))
    // About z last: the disc leans in the plane of its own axis first. Its lower face stays at the origin.
    this.disc = Manifold.cylinder(0.0001, radiusIn, radiusIn, corners)
      .rotate([0, -lean, 0])
      .rotate([0, 0, toward])
      .translate([fromIntakeEdgeIn, 10, heightIn])
  }

  /** Cuts the deck and sets the head down on the new one, intake edge at x = 0 again. */
  cut({ flatIn, angleIn, deepEdge }: SolidCut): this {
    const slope = ((deepEdge === 'exhaust' ? 1 : -1) * angleIn) / this.widthIn
    const atIntakeIn = deepEdge === 'exhaust' ? flatIn : flatIn + angleIn
    const length = Math.hypot(slope, 1)
    const before = this.block.volume()
    this.block = this.block.trimByPlane([-slope / length, 0, 1 / length], atIntakeIn / length)
    if (!(this.block.volume() < before)) throw new Error('the cut took nothing')
    const settle = (solid: Solid): Solid =>
      solid.translate([0, 0, -atIntakeIn]).rotate([0, degrees(Math.atan(slope)), 0])
    this.block = settle(this.block)
    this.disc = settle(this.disc)
    if (Math.abs(this.block.boundingBox().min[2]) > 1e-6) throw new Error('the head does not stand on its deck')
    return this
  }

  /** Least height of the sealing circle over the deck; below zero when the deck has gone through it. */
  marginIn(): number {
    return this.disc.boundingBox().min[2]
  }

  /** Height of the block at the intake and at the exhaust edge, square to its deck. */
  thicknessIn(): { readonly intake: number; readonly exhaust: number } {
    const { vertProperties, numProp } = this.block.getMesh()
    const points: [number, number][] = []
    for (let at = 0; at < vertProperties.length; at += numProp) {
      points.push([vertProperties[at] as number, vertProperties[at + 2] as number])
    }
    const top = points.filter(([, z]) => z > 2).sort((a, b) => a[0] - b[0])
    return { intake: top[0]?.[1] ?? NaN, exhaust: top.at(-1)?.[1] ?? NaN }
  }
}
