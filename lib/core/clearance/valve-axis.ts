import type { Motion } from './rigid-motion'
import { degrees, radians } from '../units/degrees'

/**
 * The way a valve opens, as a unit vector: x toward the deep edge, y along the head from end 1, z up from the deck (so z
 * is negative). Angles in degrees: `valveAngleDeg` as seen in the section, positive when the valve opens toward the deep
 * edge; `cantDeg` as seen from the side, positive when it opens toward the far end.
 */
export type ValveAxis = { readonly x: number; readonly y: number; readonly z: number }

/**
 * Example: 23° and no cant → (0.3907, 0, −0.9205).
 * Derived: a unit vector down the valve, turned by the two angles.
 */
export function valveAxis(valveAngleDeg: number, cantDeg = 0): ValveAxis {
  const across = Math.tan(radians(valveAngleDeg))
  const along = Math.tan(radians(cantDeg))
  const length = Math.hypot(across, along, 1)
  return { x: across / length, y: along / length, z: -1 / length }
}

/**
 * The same valve seen from the new deck: turned by the cut, about the length of the head.
 * Derived: rotation by φ about the length. Example: 23° after a cut of 1° → 22°.
 */
export function axisAfter(axis: ValveAxis, { angleRad }: Motion): ValveAxis {
  return {
    x: axis.x * Math.cos(angleRad) + axis.z * Math.sin(angleRad),
    y: axis.y,
    z: axis.z * Math.cos(angleRad) - axis.x * Math.sin(angleRad),
  }
}

/**
 * Angle in the section, in degrees, sign kept: after a cut it is θ − φ.
 * Derived: atan2 of its parts across and down. Example: (0.3907, 0, −0.9205) → 23°.
 */
export function sectionAngleDeg(axis: ValveAxis): number {
  return degrees(Math.atan2(axis.x, -axis.z))
}

/**
 * How much lower than its centre a circle of radius 1 about this axis reaches: sin of the full angle to the deck normal.
 * Derived: √(1 − z²) of the unit axis. Example: 23° → 0.3907.
 */
export function tiltOf(axis: ValveAxis): number {
  return Math.hypot(axis.x, axis.y)
}
