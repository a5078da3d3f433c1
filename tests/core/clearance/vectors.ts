/**
 * The cut head built from vectors alone: the new deck is a line through (0, f) and (W, f + w); heights are distances to
 * it, places across are counted along it from the dowel, whose mouth stays where it was on the block.
 */
export type V2 = readonly [x: number, z: number]
export type V3 = readonly [x: number, y: number, z: number]

export const dot = (a: readonly number[], b: readonly number[]) =>
  a.reduce((sum, value, i) => sum + value * (b[i] ?? NaN), 0)
export const minus = (a: V2, b: V2): V2 => [a[0] - b[0], a[1] - b[1]]
export const plus = (a: V2, b: V2, times = 1): V2 => [a[0] + times * b[0], a[1] + times * b[1]]
export const rad = (deg: number) => (deg * Math.PI) / 180

export function newDeck(flatIn: number, angleIn: number, widthIn: number) {
  const shallow: V2 = [0, flatIn]
  const deep: V2 = [widthIn, flatIn + angleIn]
  const length = Math.hypot(...minus(deep, shallow))
  const along: V2 = [(deep[0] - shallow[0]) / length, (deep[1] - shallow[1]) / length]
  const up: V2 = [-along[1], along[0]]
  const height = (point: V2) => dot(minus(point, shallow), up)
  /** Where a point of the head stands on the block. */
  const onBlock = (point: V2, dowelX: number): V2 => {
    const mouth = plus(shallow, along, (dowelX - shallow[0]) / along[0])
    return [dowelX + dot(minus(point, mouth), along), dot(minus(point, mouth), up)]
  }
  return { along, up, height, onBlock, angleRad: Math.atan2(along[1], along[0]) }
}

/** Points all round a circle about an axis, in space. */
export function circlePoints(centre: V3, axis: V3, radius: number, count = 7200): V3[] {
  const size = Math.hypot(...axis)
  const n: V3 = [axis[0] / size, axis[1] / size, axis[2] / size]
  const helper: V3 = Math.abs(n[1]) < 0.9 ? [0, 1, 0] : [1, 0, 0]
  const cross = (a: V3, b: V3): V3 => [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]]
  const first = cross(n, helper)
  const firstSize = Math.hypot(...first)
  const u: V3 = [first[0] / firstSize, first[1] / firstSize, first[2] / firstSize]
  const v = cross(n, u)
  return Array.from({ length: count }, (_, i) => {
    const [c, s] = [Math.cos((2 * Math.PI * i) / count) * radius, Math.sin((2 * Math.PI * i) / count) * radius]
    return [centre[0] + c * u[0] + s * v[0], centre[1] + c * u[1] + s * v[1], centre[2] + c * u[2] + s * v[2]] as const
  })
}
