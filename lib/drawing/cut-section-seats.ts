import type { CastingFacts } from '@/lib/core/casting/figures'
import type { Motion, SectionPoint } from '@/lib/core/clearance/rigid-motion'
import { tiltOf, valveAxis, axisAfter, type ValveAxis } from '@/lib/core/clearance/valve-axis'
import { circleOver, placeCircle, type CircleName, type PlacedCircle } from '@/lib/core/seat/circles'
import { seatOfRecord, type Port } from '@/lib/core/seat/seat-of-record'
import { within, type PlacedValve, type SeatMark } from './cut-section-types'

/** Seats below or above this lie in no head that could be drawn. */
const lowestIn = -0.15
const highestIn = 2

const circleNames: readonly CircleName[] = ['insert', 'top-cut', 'sealing']

/** A valve and its seat, where the record has them; null when that is not enough, or not inside the head. */
export function placeValve(casting: CastingFacts, port: Port, motion: Motion, widthIn: number): PlacedValve | null {
  const angleDeg = within(casting[`${port}ValveAngleDeg`], -60, 60)
  const xIn = within(casting[`${port}ValveXIn`], 0, widthIn)
  if (angleDeg === null || xIn === null) return null
  const axis = valveAxis(angleDeg, within(casting[`${port}ValveCantDeg`], -60, 60) ?? 0)
  const zIn = within(casting[`${port}ValveZIn`], lowestIn, highestIn)
  const rim = zIn === null ? null : { xIn, zIn }
  const placed = circleNames.flatMap((name) => {
    const circle = circleOf(casting, port, name, rim, axis)
    return circle ? [{ name, circle }] : []
  })
  const diameterIn = within(casting[`${port}ValveIn`], 0.3, 5)
  const radiusIn = diameterIn === null ? null : diameterIn / 2
  const centre = rim ?? placed.find(({ name }) => name === 'sealing')?.circle.centre
  if (!centre) return null
  if (placed.length === 0 && radiusIn === null) return null
  const circles: readonly SeatMark[] =
    placed.length > 0
      ? placed.map(({ name, circle }) => seatMark(name, circle, motion))
      : [seatMark('valve-rim', { centre, radiusIn: radiusIn ?? 0, axis }, motion)]
  const nearest = circles.reduce((a, b) => (b.overDeckIn < a.overDeckIn ? b : a))
  const valve = { port, axis, centre, radiusIn, circles, nearest }
  return liesInside(valve, widthIn) ? valve : null
}

/** By the depth gauge where there is a reading; else from the valve, whose rim stands at the sealing circle. */
function circleOf(
  casting: CastingFacts,
  port: Port,
  name: CircleName,
  rim: SectionPoint | null,
  axis: ValveAxis,
): PlacedCircle | null {
  const seat = seatOfRecord(casting, port)
  const gauged = placeCircle(seat, name, true)
  if (gauged.ok) return gauged.value
  const { diameterIn, offsetIn } = name === 'sealing' ? { ...seat.circles.sealing, offsetIn: 0 } : seat.circles[name]
  const [diameter, offset] = [within(diameterIn, 0.3, 6), within(offsetIn, -1, 1)]
  if (rim === null || diameter === null || offset === null) return null
  const centre = { xIn: rim.xIn + offset * axis.x, zIn: rim.zIn + offset * axis.z }
  return { centre, radiusIn: diameter / 2, axis }
}

function seatMark(name: SeatMark['name'], circle: PlacedCircle, motion: Motion): SeatMark {
  const { centre, radiusIn, axis } = circle
  const { across } = inSection(axis)
  const end = (side: number): SectionPoint => ({
    xIn: centre.xIn + side * radiusIn * across.xIn,
    zIn: centre.zIn + side * radiusIn * across.zIn,
  })
  return {
    name,
    ends: [end(-1), end(1)],
    nearest: nearestPoint(circle, motion),
    overDeckIn: circleOver(motion, circle).leastIn,
  }
}

/** The rim's point straight down toward the new deck: what is left of that direction in the circle's own plane. */
function nearestPoint({ centre, radiusIn, axis }: PlacedCircle, motion: Motion): SectionPoint {
  const tilt = tiltOf(axisAfter(axis, motion))
  if (tilt < 1e-9) return { xIn: centre.xIn - radiusIn, zIn: centre.zIn }
  const normal = { x: -Math.sin(motion.angleRad), z: Math.cos(motion.angleRad) }
  const along = normal.x * axis.x + normal.z * axis.z
  return {
    xIn: centre.xIn + (radiusIn * (along * axis.x - normal.x)) / tilt,
    zIn: centre.zIn + (radiusIn * (along * axis.z - normal.z)) / tilt,
  }
}

/** The axis as the section shows it, the way the valve opens, and the direction square to it toward the deep edge. */
export function inSection(axis: ValveAxis): { readonly open: SectionPoint; readonly across: SectionPoint } {
  const length = Math.hypot(axis.x, axis.z)
  return {
    open: { xIn: axis.x / length, zIn: axis.z / length },
    across: { xIn: -axis.z / length, zIn: axis.x / length },
  }
}

function liesInside({ centre, radiusIn, axis, circles }: PlacedValve, widthIn: number): boolean {
  const { across } = inSection(axis)
  const reach = radiusIn ?? 0
  const points = [
    ...circles.flatMap(({ ends, nearest }) => [...ends, nearest]),
    { xIn: centre.xIn - reach * across.xIn, zIn: centre.zIn - reach * across.zIn },
    { xIn: centre.xIn + reach * across.xIn, zIn: centre.zIn + reach * across.zIn },
  ]
  return points.every(({ xIn, zIn }) => xIn >= 0 && xIn <= widthIn && zIn >= lowestIn && zIn <= highestIn)
}
