import { linePath, type Point } from './marks'

/** Strokes at 45° inside a polygon, any shape, as one path; falling ones run the other way, so that two parts differ. */
export function hatchInside(corners: readonly Point[], spacing: number, falling = false): string {
  const lean = falling ? -1 : 1
  // Along a rising stroke x + y (y downward) stays the same; along a falling one x − y does.
  const rank = ([x, y]: Point) => x + lean * y
  const ranks = corners.map(rank)
  const [least, most] = [Math.min(...ranks), Math.max(...ranks)]
  let d = ''
  for (let c = Math.ceil(least / spacing) * spacing; c < most; c += spacing) {
    const meets = meetings(corners, ranks, c)
    for (let i = 0; i + 1 < meets.length; i += 2) {
      const [from, to] = [meets[i], meets[i + 1]]
      if (from && to) d += linePath(from, to)
    }
  }
  return d
}

/** Where the stroke of one rank crosses the sides, from left to right. */
function meetings(corners: readonly Point[], ranks: readonly number[], c: number): Point[] {
  return corners
    .flatMap((a, at): Point[] => {
      const after = (at + 1) % corners.length
      const b = corners[after]
      const [ra = 0, rb = 0] = [ranks[at], ranks[after]]
      if (!b || ra <= c === rb <= c) return []
      const share = (c - ra) / (rb - ra)
      return [[a[0] + share * (b[0] - a[0]), a[1] + share * (b[1] - a[1])]]
    })
    .sort((a, b) => a[0] - b[0])
}
