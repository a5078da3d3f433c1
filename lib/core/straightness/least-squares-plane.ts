import { mean } from '../mean'

/** z = at0 + perX·x + perY·y. */
export type Plane = { readonly at0: number; readonly perX: number; readonly perY: number }

/** Points spread across their line by less than this part of their spread along it lie on one line. */
const onOneLinePart = 1e-9
/** Points all within a millionth of an inch are one point. */
const onOnePointIn2 = 1e-12

/**
 * The plane nearest to the points by least squares of z; null when they lie on one line or are too few.
 *
 * Normal equations about the centre of the points, where they stay well conditioned.
 * Derived: the normal equations of least squares. Example: (0,0,1), (1,0,2), (0,1,3) → 1 + x + 2y.
 */
export function leastSquaresPlane(points: readonly (readonly [x: number, y: number, z: number])[]): Plane | null {
  if (points.length < 3) return null
  const meanOf = (axis: 0 | 1 | 2) => mean(points.map((point) => point[axis]))
  const [meanX, meanY, meanZ] = [meanOf(0), meanOf(1), meanOf(2)]
  let [xx, xy, yy, xz, yz] = [0, 0, 0, 0, 0]
  for (const [x, y, z] of points) {
    const [dx, dy, dz] = [x - meanX, y - meanY, z - meanZ]
    xx += dx * dx
    xy += dx * dy
    yy += dy * dy
    xz += dx * dz
    yz += dy * dz
  }
  const spread = xx * yy - xy * xy
  if (!(xx + yy > onOnePointIn2 && spread > onOneLinePart * (xx + yy) ** 2)) return null
  const perX = (xz * yy - yz * xy) / spread
  const perY = (yz * xx - xz * xy) / spread
  return { at0: meanZ - perX * meanX - perY * meanY, perX, perY }
}
