import type { Canvas } from './canvas'

const lineMm = 0.18
const belowMm = 0.6

/** A rule to write on by hand, a little below the baseline of the words beside it. */
export function writtenRule({ page }: Canvas, xMm: number, lengthMm: number, baselineMm: number): void {
  const y = baselineMm + belowMm
  page.line([xMm, y], [xMm + lengthMm, y], 'ink', lineMm)
}
