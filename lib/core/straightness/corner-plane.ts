import { cornerNames, type Corners } from './corners-fit'

/** Further off than this the fourth corner is a slip of the gauge or of the keypad, or a bent head. */
const offPlaneIn = 0.003

/**
 * Whether the fourth corner lies on the plane of the other three, within 3 thou.
 *
 * @param corners thickness in inches; the four places make a rectangle
 * @returns null when fewer than four were read: three always lie on one plane
 *
 * Off by |i₁ + e₂ − e₁ − i₂|, whichever corner is called the fourth. Example: 4.500, 4.480, 4.501, 4.581 → 0.100 off.
 * Derived: the plane through three corners of a rectangle, at the fourth.
 */
export function cornersOnOnePlane(corners: Corners): boolean | null {
  const [i1, e1, i2, e2] = cornerNames.map((name) => corners[name] ?? null)
  if (i1 === null || e1 === null || i2 === null || e2 === null) return null
  if (i1 === undefined || e1 === undefined || i2 === undefined || e2 === undefined) return null
  return Math.abs(i1 + e2 - e1 - i2) <= offPlaneIn + rounding
}

/** Decimals are not exact in binary. */
const rounding = 1e-9
