import { linePath, type Point } from './marks'

/** Strokes at 45° inside a polygon, any shape, as one path; falling ones run the other way, so that two parts differ. */
export function hatchInside(corners: readonly Point[], spacing: number, falling = false): string {
  const lean = falling ? -1 : 1
  // Along a rising stroke x + y (y downward) stays the same; along a falling one x − y does.
  const ranks = corners.map(([x, y]) => x + lean * y)
  const most = Math.max(...ranks)
  const strokes: string[] = []
  for (let c = Math.ceil(Math.min(...ranks) / spacing) * spacing; c < most; c += spacing) {
    const xs = meetings(corners, ranks, c)
    for (let i = 0; i + 1 < xs.length; i += 2) {
      const [from = 0, to = 0] = [xs[i], xs[i + 1]]
      strokes.push(linePath([from, (c - from) * lean], [to, (c - to) * lean]))
    }
  }
  return strokes.join('')
}

/** Where across the stroke of one rank crosses the sides, from left to right. A loop: it runs at every move of a slider. */
function meetings(corners: readonly Point[], ranks: readonly number[], c: number): number[] {
  const xs: number[] = []
  let [a, ra] = [corners[corners.length - 1], ranks[ranks.length - 1] ?? 0]
  for (let at = 0; at < corners.length; at++) {
    const [b, rb] = [corners[at], ranks[at] ?? 0]
    if (a && b && ra <= c !== rb <= c) xs.push(a[0] + ((c - ra) / (rb - ra)) * (b[0] - a[0]))
    ;[a, ra] = [b, rb]
  }
  return xs.sort((one, other) => one - other)
}
